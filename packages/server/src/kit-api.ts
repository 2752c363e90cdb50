import type { FastifyInstance } from 'fastify';
import { computed } from './answer-schema.ts';
import type { EntryPorts } from './entry-ports.ts';

interface Hanging {
  readonly Params: { readonly instrument: string };
  readonly Querystring: { readonly from: string; readonly to: string };
}

const day = { type: 'string', pattern: '^\\d{4}-\\d{2}-\\d{2}$' };
/** What the record says of instruments, over all campaigns. */
export function addKitApi(app: FastifyInstance, ports: Pick<EntryPorts, 'kitInCampaigns' | 'hanging'>): void {
  app.get(
    '/api/kit/in-campaigns',
    {
      schema: {
        response: { 200: computed('KitInCampaigns', 'instruments that only campaigns hold') },
        summary: 'Kit of campaigns',
      },
    },
    () => ports.kitInCampaigns(),
  );
  app.get<Hanging>(
    '/api/kit/:instrument/hanging',
    {
      schema: {
        params: {
          type: 'object',
          properties: { instrument: { type: 'string', minLength: 1, maxLength: 200 } },
          required: ['instrument'],
        },
        querystring: { type: 'object', properties: { from: day, to: day }, required: ['from', 'to'] },
        response: { 200: computed('HangingResults', 'what was read with an instrument in a stretch of time') },
        summary: 'What hangs on an instrument',
      },
    },
    ({ params, query }) => ports.hanging({ instrument: params.instrument, ...query }),
  );
}
