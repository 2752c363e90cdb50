import type { TracePreviewRequest } from '@provinghouse/contract';
import type { FastifyInstance } from 'fastify';
import { computed } from './answer-schema.ts';
import type { EntryPorts } from './entry-ports.ts';
import { campaignCode } from './entry-schema.ts';
import { refuseOtherOrigins } from './origin-check.ts';

interface InCampaign {
  readonly Params: { readonly code: string };
}

const params = { type: 'object', properties: { code: campaignCode }, required: ['code'] };
const perhaps = { type: ['string', 'null'], maxLength: 200 };
const column = { type: ['string', 'null'], maxLength: 500 };

const previewBody = {
  type: 'object',
  properties: {
    sha256: { type: 'string', pattern: '^[0-9a-f]{64}$' },
    name: { type: 'string', minLength: 1, maxLength: 300 },
    rig: perhaps,
    piece: perhaps,
    pulledAt: perhaps,
    columns: {
      type: 'object',
      properties: { time: column, force: column, table: column, extension: column },
      required: ['time', 'force', 'table', 'extension'],
      additionalProperties: false,
    },
  },
  required: ['sha256', 'name', 'rig', 'piece', 'pulledAt'],
  additionalProperties: false,
};

/** What pulls need besides entering: a look at a file before it becomes a recording, and the order they are to be made in. */
export function addPullsApi(app: FastifyInstance, ports: Pick<EntryPorts, 'previewTrace' | 'plannedPulls'>): void {
  app.post<InCampaign & { readonly Body: TracePreviewRequest }>(
    '/api/campaigns/:code/trace-preview',
    {
      schema: {
        params,
        body: previewBody,
        response: { 200: computed('TracePreview', 'what a file that was sent would be as the recording of a pull') },
        summary: 'A file that was sent, read as the recording it would be; nothing is kept',
      },
      onRequest: refuseOtherOrigins,
      bodyLimit: 16 * 1024,
    },
    ({ params: { code }, body }) => ports.previewTrace(code, body),
  );
  app.get<InCampaign>(
    '/api/campaigns/:code/planned-pulls',
    {
      schema: {
        params,
        response: { 200: computed('PlannedPulls', 'the order of the pulls, drawn by lot from the seed of the plan') },
        summary: 'The order in which the pieces are to be pulled',
      },
    },
    ({ params: { code } }) => ports.plannedPulls(code),
  );
}
