import swagger from '@fastify/swagger';
import type { FastifyInstance } from 'fastify';
import { problemSchema } from './answer-schema.ts';

const title = 'Provinghouse';
const version = '0.1.0';
const description =
  'The record of a lab that tests chain to destruction, over HTTP. It serves the machine it runs on. An answer to an entry means that the ledger has it; what is refused is a problem of RFC 9457 with a stable code.';

/** Gathers every route that is added after it into one OpenAPI document, served at `/api/openapi.json`. */
export function addOpenApi(app: FastifyInstance): void {
  app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: { title, version, description, license: { name: 'Apache-2.0', identifier: 'Apache-2.0' } },
      components: { schemas: { Problem: problemSchema } },
    },
    transform: ({ schema, url, route }) => {
      const hidden = url.endsWith('*') && !url.includes('/files/');
      return { schema: { ...schema, ...(hidden ? { hide: true } : {}), ...named(url, route.method, schema) }, url };
    },
    transformObject: (document) =>
      'openapiObject' in document ? withProblems(document.openapiObject) : document.swaggerObject,
  });
  app.register(async (scope) => {
    scope.get('/api/openapi.json', { schema: { hide: true } as object }, () => app.swagger());
  });
}

/** A name for each operation, from its method and address: it stands as long as the address does. */
function named(url: string, method: string | string[], schema: unknown): object {
  const verb = (Array.isArray(method) ? (method[0] ?? '') : method).toLowerCase();
  const words = url
    .replace('/api/', '')
    .split('/')
    .map((part) => part.replace('*', 'path').replace(/[^A-Za-z0-9]+/g, ''));
  const given = typeof schema === 'object' && schema !== null && 'operationId' in schema;
  return given ? {} : { operationId: [verb, ...words.filter((word) => word !== '')].join('-') };
}

/** Every operation may answer with a problem. */
function withProblems<T extends { paths?: unknown }>(document: T): T {
  const paths = document.paths as Readonly<
    Record<string, Readonly<Record<string, { responses?: Record<string, unknown> }>>>
  >;
  const content = { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } };
  for (const item of Object.values(paths))
    for (const operation of Object.values(item))
      if (operation.responses) operation.responses.default = { description: 'a problem', content };
  return document;
}
