import { InputError } from '@provinghouse/core';
import { buildApp } from './app.ts';
import type { EntryPorts } from './entry-ports.ts';
import type { ServerPorts } from './ports.ts';
import type { RigPorts } from './rig-ports.ts';
import { servedNames } from './served-names.ts';

export interface StartOptions {
  readonly ports: ServerPorts;
  readonly entries?: EntryPorts;
  readonly rigs?: RigPorts;
  /** 0 takes any free port. */
  readonly port: number;
  /** Address to listen on; the loopback unless said otherwise. */
  readonly host?: string;
  readonly webRoot?: string;
  /** Told of each fault of the server; writes to the error stream by default. */
  readonly onFault?: (error: unknown) => void;
}

export interface RunningServer {
  /** The address to open, e.g. `http://127.0.0.1:8480`. */
  readonly address: string;
  close(): Promise<void>;
}

/**
 * Starts listening. A port that is taken is an InputError `server/port-taken` with its cure; so is an address that is not this machine's
 * (`server/host-unknown`).
 */
export async function startServer({
  ports,
  entries,
  rigs,
  port,
  host = '127.0.0.1',
  webRoot,
  onFault = console.error,
}: StartOptions): Promise<RunningServer> {
  const app = buildApp(ports, {
    hostNames: servedNames(host),
    onFault,
    ...(entries === undefined ? {} : { entries }),
    ...(rigs === undefined ? {} : { rigs }),
    ...(webRoot === undefined ? {} : { webRoot }),
  });
  try {
    const address = await app.listen({ port, host });
    return { address, close: () => app.close() };
  } catch (error) {
    await app.close();
    throw listenFault(error, { port, host });
  }
}

function listenFault(error: unknown, at: { readonly port: number; readonly host: string }): unknown {
  const code = typeof error === 'object' && error !== null && 'code' in error ? error.code : null;
  if (code === 'EADDRINUSE') {
    return new InputError(
      'server/port-taken',
      `Port ${at.port} on ${at.host} is taken. Stop the program that holds it, or choose another port (0 takes any free one).`,
      at,
    );
  }
  if (code === 'EACCES') {
    return new InputError(
      'server/port-refused',
      `Port ${at.port} on ${at.host} may not be used by this account. Choose a port above 1023.`,
      at,
    );
  }
  if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND') {
    return new InputError(
      'server/host-unknown',
      `${at.host} is no address of this machine. Leave the host out to listen on 127.0.0.1.`,
      at,
    );
  }
  return error;
}
