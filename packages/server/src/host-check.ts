/** Names under which a browser on this machine reaches a loopback address. */
export const loopbackNames: readonly string[] = ['localhost', '127.0.0.1', '[::1]'];

/** True for an address that only this machine can reach. */
export function isLoopback(host: string): boolean {
  return host === 'localhost' || host === '::1' || host === '[::1]' || /^127(\.\d{1,3}){3}$/.test(host);
}

/** The name in a Host header, without its port, in lower case; null when there is none. */
export function hostName(header: string | undefined): string | null {
  if (!header) return null;
  const name = /^(\[[0-9a-f:.]+\]|[^:@/]+)(:\d{1,5})?$/i.exec(header.trim())?.[1];
  return name === undefined ? null : name.toLowerCase();
}

/**
 * True when a request may be answered. A page of a foreign site can point its own name at this machine (DNS rebinding)
 * and would then read the record as its own origin; its requests still carry its name in the Host header.
 */
export function isHostAllowed(header: string | undefined, names: readonly string[]): boolean {
  const name = hostName(header);
  return name !== null && names.includes(name);
}
