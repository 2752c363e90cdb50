import { createHash } from 'node:crypto';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';

/**
 * Own origin only; images also from `blob:`, by which a figure becomes a PNG. Styles set by script go through the object
 * model, which the policy does not touch, so no inline style is allowed.
 */
const policy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' blob:",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

const everywhere = {
  'content-security-policy': policy,
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-resource-policy': 'same-origin',
  'cross-origin-opener-policy': 'same-origin',
} as const;

/** Headers of every reply; for the API besides `no-store` and an entity tag over the body. */
export function addHeaders(app: FastifyInstance): void {
  app.addHook('onRequest', async (request, reply) => {
    reply.headers(everywhere);
    if (isApi(request.url)) reply.header('cache-control', 'no-store');
  });
  app.addHook('onSend', async (request, reply, payload) =>
    isApi(request.url) && reply.statusCode === 200 ? tagged(request, reply, payload) : payload,
  );
}

export function isApi(url: string): boolean {
  return url === '/api' || url.startsWith('/api/');
}

/** Answers 304 without a body when the client already holds these very bytes (RFC 9110, 13.1.2). */
function tagged(request: FastifyRequest, reply: FastifyReply, payload: unknown): unknown {
  if (typeof payload !== 'string' && !Buffer.isBuffer(payload)) return payload;
  const tag = `"${createHash('sha256').update(payload).digest('base64url')}"`;
  reply.header('etag', tag);
  const held = (request.headers['if-none-match'] ?? '').split(',').map((part) => part.trim().replace(/^W\//, ''));
  if (!held.includes(tag) && !held.includes('*')) return payload;
  reply.code(304).removeHeader('content-length');
  return '';
}
