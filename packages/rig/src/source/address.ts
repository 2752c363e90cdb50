import { InputError } from '@provinghouse/core';
import { type SourceConfiguration, sourceConfiguration } from './configuration.ts';

/** What a line source needs beside its address. */
export interface AddressOptions {
  readonly pattern: string;
  readonly decimal?: '.' | ',' | undefined;
  readonly isClockFree?: boolean | undefined;
}

function fault(address: string): InputError {
  const message = `"${address}" is no source of lines. Write tcp://host:port or serial:/dev/ttyUSB0?baud=9600.`;
  return new InputError('source/address', message, { address });
}

function serialSettings(address: string): Record<string, unknown> {
  const [path, query] = address.slice('serial:'.length).split('?');
  const given = new URLSearchParams(query ?? '');
  const number = (name: string) => (given.has(name) ? { [name]: Number(given.get(name)) } : {});
  const parity = given.get('parity');
  return { path, ...number('baud'), ...number('dataBits'), ...number('stopBits'), ...(parity ? { parity } : {}) };
}

/**
 * The configuration meant by an address on a command line: `tcp://host:port`, `serial:/dev/ttyUSB0?baud=9600&parity=even`.
 * @throws InputError source/address, source/configuration
 */
export function configurationOfAddress(address: string, options: AddressOptions): SourceConfiguration {
  if (address.startsWith('serial:'))
    return sourceConfiguration({ kind: 'serial lines', ...serialSettings(address), ...options });
  if (!URL.canParse(address)) throw fault(address);
  const { protocol, hostname, port } = new URL(address);
  if (protocol !== 'tcp:' || hostname === '' || port === '') throw fault(address);
  const host = hostname.replace(/^\[|\]$/g, '');
  return sourceConfiguration({ kind: 'tcp lines', host, port: Number(port), ...options });
}
