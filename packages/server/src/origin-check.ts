import type { FastifyRequest } from 'fastify';
import { ProblemError } from './problem.ts';

/**
 * Refuses what a page of another site sends. A browser puts the origin of the page on every WebSocket and every POST and no script can change it;
 * a request without one comes from a program, which could read the address by itself anyway. The policy of other sites does not keep their pages
 * from opening a WebSocket here, so this must (RFC 6455, 10.2).
 */
export async function refuseOtherOrigins(request: FastifyRequest): Promise<void> {
  const { origin, host } = request.headers;
  if (origin === undefined || isOwn(origin, host)) return;
  throw new ProblemError('origin-refused', `A page of ${origin} may not write here. Open the screens of this server.`);
}

function isOwn(origin: string, host: string | undefined): boolean {
  return host !== undefined && URL.canParse(origin) && new URL(origin).host === host.toLowerCase();
}
