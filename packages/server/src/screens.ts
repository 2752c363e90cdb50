import { existsSync } from 'node:fs';
import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { ProblemError } from './problem.ts';

/**
 * Serves the built web screens. Files with a hash in their name never change and are kept by the browser; the page itself is asked
 * for each time. An address that names no file is the page: the screens read the address themselves.
 */
export function addScreens(app: FastifyInstance, webRoot: string): void {
  const built = existsSync(join(webRoot, 'index.html'));
  if (built) {
    app.register(fastifyStatic, {
      root: webRoot,
      cacheControl: false,
      setHeaders: (reply, path) => {
        reply.header(
          'cache-control',
          /[\\/]assets[\\/]/.test(path) ? 'public, max-age=31536000, immutable' : 'no-cache',
        );
      },
    });
  }
  app.setNotFoundHandler(async (request, reply) => {
    if (request.method !== 'GET' && request.method !== 'HEAD') return refuseMethod(request, reply);
    if (!isPage(request)) throw new ProblemError('address-unknown', `There is nothing at ${request.url}.`);
    if (!built) throw new ProblemError('screens-not-built', 'Build the screens first: npm run build.');
    return reply.sendFile('index.html');
  });
}

/** A page is asked for by a reader, not by a script or an image, and its last part is not a file name of ours. */
function isPage(request: FastifyRequest): boolean {
  const path = request.url.split('?')[0] ?? '';
  return (
    !path.startsWith('/api') && !path.startsWith('/assets/') && (request.headers.accept ?? '').includes('text/html')
  );
}

function refuseMethod(request: FastifyRequest, reply: FastifyReply): never {
  reply.header('allow', 'GET, HEAD');
  throw new ProblemError('method-refused', `${request.method} is not answered at ${request.url}.`);
}
