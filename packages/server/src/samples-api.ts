import type { CutRequest } from '@provinghouse/contract';
import type { FastifyInstance } from 'fastify';
import type { EntryPorts } from './entry-ports.ts';
import { campaignCode } from './entry-schema.ts';
import { refuseOtherOrigins } from './origin-check.ts';

interface InCampaign {
  readonly Params: { readonly code: string };
}

const params = { type: 'object', properties: { code: campaignCode }, required: ['code'] } as const;

const cutBody = {
  type: 'object',
  properties: {
    sample: { type: 'string', minLength: 1, maxLength: 200 },
    count: { type: 'integer', minimum: 1, maximum: 200, description: 'pieces cut now' },
    links: { type: 'integer', minimum: 1, maximum: 10000, description: 'free links of each' },
    gaugedOver: { type: ['string', 'null'], enum: ['bare steel', 'zinc', null] },
    note: { type: ['string', 'null'], minLength: 1, maxLength: 2000 },
    piecesBefore: { type: 'integer', minimum: 0, description: 'pieces the sample had when this was asked' },
    who: { type: 'string', minLength: 1, maxLength: 200 },
    why: { type: ['string', 'null'], maxLength: 2000 },
  },
  required: ['sample', 'count', 'links', 'gaugedOver', 'note', 'piecesBefore', 'who'],
  additionalProperties: false,
} as const;

const cutAnswer = {
  type: 'object',
  properties: {
    ledgerSeq: { type: 'integer', description: 'place of the last entry in the ledger: it is kept' },
    pieces: {
      type: 'array',
      items: { type: 'string' },
      description: 'codes of the pieces, in the order of their tags',
    },
  },
  required: ['ledgerSeq', 'pieces'],
} as const;

interface LabelsQuery {
  readonly pieces: string;
  readonly sheet: 'a4-3x8' | 'single-62x29';
  readonly used: number;
  readonly marks: boolean;
}

const labelsQuery = {
  type: 'object',
  properties: {
    pieces: { type: 'string', maxLength: 8000, default: '', description: 'codes with commas between; empty for all' },
    sheet: { type: 'string', enum: ['a4-3x8', 'single-62x29'], default: 'a4-3x8' },
    used: {
      type: 'integer',
      minimum: 0,
      maximum: 23,
      default: 0,
      description: 'labels of the first sheet used before',
    },
    marks: { type: 'boolean', default: false, description: 'ticks to cut by, for plain paper' },
  },
  additionalProperties: false,
} as const;

/** Samples: the cutting into pieces, and the labels of the pieces. */
export function addSamplesApi(app: FastifyInstance, ports: EntryPorts): void {
  app.post<InCampaign & { readonly Body: CutRequest }>(
    '/api/campaigns/:code/samples/cut',
    { schema: { params, body: cutBody, response: { 200: cutAnswer } }, onRequest: refuseOtherOrigins },
    ({ params: { code }, body }) => ports.cut(code, body),
  );
  app.get<InCampaign & { readonly Querystring: LabelsQuery }>(
    '/api/campaigns/:code/labels.pdf',
    { schema: { params, querystring: labelsQuery } },
    async ({ params: { code }, query, protocol, host }, reply) => {
      const pdf = await ports.labels(code, {
        pieces: query.pieces.split(',').filter((piece) => piece !== ''),
        sheet: query.sheet,
        used: query.used,
        withCuttingMarks: query.marks,
        origin: `${protocol}://${host}`,
      });
      reply.header('content-disposition', `inline; filename*=UTF-8''${encodeURIComponent(`${code}-labels.pdf`)}`);
      return reply.type('application/pdf').send(Buffer.from(pdf));
    },
  );
}
