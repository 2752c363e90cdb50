import { type ModbusWireOptions, serveModbus } from './modbus-wire.ts';
import { type MqttWireOptions, serveMqtt } from './mqtt-wire.ts';
import { type PtyWireOptions, servePty } from './pty-wire.ts';
import { type RtuWireOptions, serveRtu } from './rtu-wire.ts';
import { serveTcp, type TcpWireOptions } from './tcp-wire.ts';
import type { PracticeWire } from './wire.ts';

export type ServePracticeOptions =
  | TcpWireOptions
  | PtyWireOptions
  | ModbusWireOptions
  | RtuWireOptions
  | MqttWireOptions;

/**
 * Puts a practice rig on a wire; resolves once it can be read. All it sends is marked as practice.
 * Throws `InputError` on options out of range and where the wire cannot be laid.
 */
export function servePractice(options: ServePracticeOptions): Promise<PracticeWire> {
  switch (options.over) {
    case 'tcp':
      return serveTcp(options);
    case 'pty':
      return servePty(options);
    case 'modbus':
      return serveModbus(options);
    case 'rtu':
      return serveRtu(options);
    case 'mqtt':
      return serveMqtt(options);
  }
}
