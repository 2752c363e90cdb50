import type { SourceConfiguration } from './configuration.ts';
import { keyedReadings } from './keyed.ts';
import { modbusRegisters } from './modbus.ts';
import { mqttTopics } from './mqtt-topics.ts';
import { serialLines } from './serial-lines.ts';
import type { Source } from './source.ts';
import { tcpLines } from './tcp-lines.ts';

/**
 * The source a configuration describes, not yet started.
 * @throws InputError source/* where the configuration is well formed but cannot work: a pattern, a unit, a range
 */
export function openSource(configuration: SourceConfiguration): Source {
  switch (configuration.kind) {
    case 'serial lines':
      return serialLines(configuration);
    case 'tcp lines':
      return tcpLines(configuration);
    case 'modbus tcp':
      return modbusRegisters({ ...configuration, wire: { host: configuration.host, port: configuration.port } });
    case 'modbus rtu':
      return modbusRegisters({ ...configuration, wire: configuration });
    case 'mqtt':
      return mqttTopics(configuration);
    case 'keyed':
      return keyedReadings(configuration.channels);
  }
}
