import { benchBook } from '@provinghouse/service/entry';
import type { FastifyInstance } from 'fastify';
import { answers } from './answer-schema.ts';
import type { ServerPorts } from './ports.ts';
import { isProblemCode, ProblemError, problemKinds } from './problem.ts';

interface CampaignAddress {
  readonly Params: { readonly code: string };
}

interface BookAddress {
  readonly Params: { readonly code?: string };
}

interface PullAddress {
  readonly Params: { readonly code: string; readonly pull: string };
}

const code = { type: 'string', pattern: '^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$' };
const params = { type: 'object', properties: { code }, required: ['code'] };
const pageQuery = {
  type: 'object',
  properties: {
    after: { type: 'string', maxLength: 64, default: '' },
    limit: { type: 'integer', minimum: 1, maximum: 500, default: 100 },
  },
};
const answered = (answer: object, summary: string) => ({ schema: { params, response: { 200: answer }, summary } });
const pullParams = {
  type: 'object',
  properties: { code, pull: { type: 'string', minLength: 1, maxLength: 200 } },
  required: ['code', 'pull'],
};

/** The reading side of the API: each route asks one port and sends what it says. */
export function addApi(app: FastifyInstance, ports: ServerPorts): void {
  app.get<{ Querystring: { after: string; limit: number } }>(
    '/api/campaigns',
    {
      schema: { querystring: pageQuery, response: { 200: answers.campaigns }, summary: 'The campaigns of the record' },
    },
    ({ query }) => ports.campaigns(query),
  );

  app.get<CampaignAddress>(
    '/api/campaigns/:code',
    answered(answers.finding, 'The finding of a campaign'),
    async ({ params }) => known(await ports.finding(params.code), params.code),
  );

  app.get<CampaignAddress>(
    '/api/campaigns/:code/brief',
    answered(answers.brief, 'What was asked, and what can be shown'),
    async ({ params }) => known(await ports.brief(params.code), params.code),
  );

  addLedger(app, ports);

  app.get<PullAddress>(
    '/api/campaigns/:code/pulls/:pull/curve',
    { schema: { params: pullParams, response: { 200: answers.curve }, summary: 'The curve of a pull' } },
    async ({ params }) => {
      const curve = await ports.curve(params.code, params.pull);
      if (curve !== null) return curve;
      throw new ProblemError(
        'curve-unknown',
        `Pull ${params.pull} of campaign ${params.code} has no recording here. A maximum keyed from the panel has none.`,
      );
    },
  );

  app.get<CampaignAddress>(
    '/api/campaigns/:code/report.pdf',
    { schema: { params, summary: 'The report as PDF', produces: ['application/pdf'] } },
    async ({ params }, reply) => {
      const report = await ports.report(params.code);
      if (report === null) throw new ProblemError('report-unknown', `There is no report for campaign ${params.code}.`);
      reply.type('application/pdf').header('content-disposition', `inline; filename="${params.code}.pdf"`);
      return Buffer.from(report);
    },
  );

  app.get<CampaignAddress>(
    '/api/campaigns/:code/package.zip',
    { schema: { params, summary: 'The data package as a ZIP', produces: ['application/zip'] } },
    async ({ params }, reply) => {
      const zip = known(await ports.package(params.code), params.code);
      reply.type('application/zip').header('content-disposition', `attachment; filename="${params.code}.zip"`);
      return Buffer.from(zip);
    },
  );

  app.get<{ Params: { code: string } }>('/api/problems/:code', async ({ params }) => {
    if (!isProblemCode(params.code)) throw new ProblemError('address-unknown', `There is no problem ${params.code}.`);
    return { code: params.code, ...problemKinds[params.code] };
  });

  app.get('/api/*', async (request) => {
    throw new ProblemError('address-unknown', `There is nothing at ${request.url}.`);
  });
}

interface LedgerQuery {
  readonly Querystring: {
    readonly before?: number;
    readonly limit: number;
    readonly search: string;
    readonly kinds: string;
  };
}

const ledgerQuery = {
  type: 'object',
  properties: {
    before: { type: 'integer', minimum: 1 },
    limit: { type: 'integer', minimum: 1, maximum: 500, default: 100 },
    search: { type: 'string', maxLength: 200, default: '' },
    kinds: {
      type: 'string',
      maxLength: 200,
      default: '',
      description: 'kinds of record, parted by commas; empty for all',
    },
  },
};

function addLedger(app: FastifyInstance, ports: ServerPorts): void {
  const books = [
    { root: '/api/campaigns/:code', params },
    { root: '/api/bench', params: { type: 'object', properties: {} } },
  ];
  for (const { root, params } of books) {
    const summary = 'The ledger, newest entry first, searched for words';
    app.get<BookAddress & LedgerQuery>(
      `${root}/ledger`,
      { schema: { params, querystring: ledgerQuery, response: { 200: answers.ledger }, summary } },
      async ({ params, query: { before = null, limit, search, kinds } }) => {
        const code = params.code ?? benchBook;
        const asked = { before, limit, search, kinds: kinds.split(',').filter((kind) => kind !== '') };
        return known(await ports.ledger(code, asked), code);
      },
    );
    app.get<BookAddress>(
      `${root}/ledger/state`,
      { schema: { params, response: { 200: answers.ledgerState }, summary: 'Whether the ledger is whole' } },
      async ({ params }) => known(await ports.ledgerState(params.code ?? benchBook), params.code ?? benchBook),
    );
  }
}

function known<T>(record: T | null, campaign: string): T {
  if (record !== null) return record;
  throw new ProblemError(
    'campaign-unknown',
    `There is no campaign ${campaign} in this record. GET /api/campaigns lists those there are.`,
  );
}
