import type {
  CommissionRequest,
  CorrectionRequest,
  EntryRequest,
  StepRequest,
  TableName,
  WithdrawalRequest,
} from '@provinghouse/contract';
import { benchBook, type FilesAsked } from '@provinghouse/service/entry';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { EntryPorts } from './entry-ports.ts';
import { campaignCode, entryAnswers, entryBodies, filesQuery, kind, pageQuery } from './entry-schema.ts';
import { addKitApi } from './kit-api.ts';
import { refuseOtherOrigins } from './origin-check.ts';
import { addPullsApi } from './pulls-api.ts';

interface InBook {
  readonly Params: { readonly code: string };
}

/** Largest body of rows, and of a file: an hour of two channels at 10 kHz is some 700 MB, and is recorded live, not dropped here. */
const rowsLimit = 8 * 1024 * 1024;
const fileLimit = 256 * 1024 * 1024;

/** The writing side of the API: each answer says that the ledger has it, or that nothing was kept. */
export function addEntryApi(app: FastifyInstance, ports: EntryPorts): void {
  app.addContentTypeParser('application/octet-stream', { parseAs: 'buffer', bodyLimit: fileLimit }, (_, bytes, done) =>
    done(null, bytes),
  );
  app.post<{ readonly Body: CommissionRequest }>(
    '/api/campaigns',
    write(entryBodies.commission, entryAnswers.kept),
    ({ body }) => ports.commission(body),
  );
  app.put<{ readonly Body: Buffer }>(
    '/api/files',
    { schema: { response: { 200: entryAnswers.heldFile } }, onRequest: refuseOtherOrigins, bodyLimit: fileLimit },
    ({ body }) => ports.hold(body),
  );
  app.post('/api/demo', write(entryBodies.nothing, entryAnswers.keptCampaign), () => ports.demo());
  addSteps(app, ports);
  addPullsApi(app, ports);
  addKitApi(app, ports);
  addBook(app, ports, { root: '/api/campaigns/:code', params: { code: campaignCode } });
  addBook(app, ports, { root: '/api/bench', params: {} });
}

/** Steps that a campaign takes once. */
function addSteps(app: FastifyInstance, ports: EntryPorts): void {
  const schema = write(entryBodies.step, entryAnswers.keptRevision, { code: campaignCode });
  app.post<InBook & { readonly Body: StepRequest }>('/api/campaigns/:code/plan/freeze', schema, ({ params, body }) =>
    ports.freeze(params.code, body),
  );
  app.post<InBook & { readonly Body: StepRequest }>('/api/campaigns/:code/unblind', schema, ({ params, body }) =>
    ports.unblind(params.code, body),
  );
}

interface Book {
  readonly root: string;
  readonly params: Readonly<Record<string, object>>;
}

function addBook(app: FastifyInstance, ports: EntryPorts, { root, params }: Book): void {
  const bookOf = (request: FastifyRequest<InBook>) => request.params.code ?? benchBook;
  const { kept, keptRevision, rows } = entryAnswers;
  app.get<InBook & { Params: { kind: TableName }; Querystring: { after: number; limit: number } }>(
    `${root}/records/:kind`,
    {
      schema: {
        params: object({ ...params, kind }),
        querystring: pageQuery,
        response: { 200: rows },
      },
    },
    (request) => ports.rows(bookOf(request), request.params.kind, request.query),
  );
  app.post<InBook & { Body: EntryRequest }>(`${root}/records`, write(entryBodies.enter, kept, params), (request) =>
    ports.enter(bookOf(request), request.body),
  );
  app.post<InBook & { Body: CorrectionRequest }>(
    `${root}/corrections`,
    write(entryBodies.correct, keptRevision, params),
    (request) => ports.correct(bookOf(request), request.body),
  );
  app.post<InBook & { Body: WithdrawalRequest }>(
    `${root}/withdrawals`,
    write(entryBodies.withdraw, kept, params),
    (request) => ports.withdraw(bookOf(request), request.body),
  );
  app.get<InBook & { Querystring: FilesAsked }>(
    `${root}/files`,
    {
      schema: {
        params: object(params),
        querystring: filesQuery,
        response: { 200: entryAnswers.files },
        summary: 'Files of a book, by path: recordings, photographs, own specifications',
      },
    },
    (request) => ports.files(bookOf(request), request.query),
  );
  app.get<InBook & { Params: { '*': string } }>(
    `${root}/files/*`,
    { schema: { params: object({ ...params, '*': { type: 'string', minLength: 1, maxLength: 400 } }) } },
    async (request, reply) => {
      const { bytes, media, path } = await ports.file(bookOf(request), request.params['*']);
      // Only what a page may show without running it is shown; the rest is offered to be kept.
      const isShown = /^image\/(png|jpeg|webp|gif|avif)$/.test(media);
      const name = encodeURIComponent(path.split('/').at(-1) ?? 'file');
      reply.type(isShown ? media : 'application/octet-stream');
      reply.header('content-disposition', `${isShown ? 'inline' : 'attachment'}; filename*=UTF-8''${name}`);
      return Buffer.from(bytes);
    },
  );
}

function object(properties: Readonly<Record<string, object>>): object {
  return { type: 'object', properties, required: Object.keys(properties) };
}

function write(body: object, answer: object, params: Readonly<Record<string, object>> = {}) {
  return {
    schema: { params: object(params), body, response: { 200: answer } },
    onRequest: refuseOtherOrigins,
    bodyLimit: rowsLimit,
  };
}
