import { hostname, networkInterfaces } from 'node:os';
import { isLoopback, loopbackNames } from './host-check.ts';

/**
 * Host names to answer to when listening on `host`: the loopback's always, the address itself, and for "every address" (0.0.0.0, ::)
 * those this machine has and its own name.
 */
export function servedNames(host: string): readonly string[] {
  if (isLoopback(host)) return loopbackNames;
  const own = host === '0.0.0.0' || host === '::' ? [...machineAddresses(), hostname()] : [host];
  return [...new Set([...loopbackNames, ...own.map(headerForm)])];
}

function machineAddresses(): string[] {
  return Object.values(networkInterfaces()).flatMap((addresses) => (addresses ?? []).map(({ address }) => address));
}

/** As it stands in a Host header: IPv6 in brackets (RFC 9110, 7.2), without a zone. */
function headerForm(name: string): string {
  const plain = name.toLowerCase().replace(/%.*$/, '');
  return plain.includes(':') && !plain.startsWith('[') ? `[${plain}]` : plain;
}
