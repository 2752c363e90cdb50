/** JSON Schemas of what the server answers. What is computed is an object of the contract package, whose types describe it member by member. */

/** Names that type; the generator of the client takes it from there. */
const contractKey = 'x-contract';

/** An answer that the type of that name in the contract package describes member by member. */
export function computed(type: string, description: string): object {
  return { type: 'object', additionalProperties: true, description, [contractKey]: type };
}

const finding = computed('CampaignFinding', 'the whole finding of a campaign');
const summary = computed('CampaignSummary', 'how far a campaign is and where its products stand');
const desk = computed('RigDesk', 'what stands on a rig, and whether a pull is armed, runs or is unfinished');

export const answers = {
  campaigns: {
    type: 'object',
    properties: {
      campaigns: { type: 'array', items: summary },
      next: { type: ['string', 'null'], description: 'what to ask the next page with, as `after`' },
    },
    required: ['campaigns', 'next'],
  },
  finding,
  brief: computed('BriefFinding', 'what was asked, and what the pieces prepared can show'),
  ledger: computed('LedgerPage', 'what was written, by whom, when and why, and the cells it changed, the newest first'),
  ledgerState: computed('LedgerState', 'whether the chain of hashes holds and everything kept agrees with it'),
  curve: computed('PullCurve', 'the curve of a pull, thinned for drawing so that extremes stay'),
  rigs: { type: 'array', items: desk },
  desk,
} as const;

const string = { type: 'string' as const };
const integer = { type: 'integer' as const };

/** The body of every answer that is not what was asked for (RFC 9457). */
export const problemSchema = {
  type: 'object' as const,
  description:
    'problem details of RFC 9457; `code` is stable, `fault` is the code of the fault where it has one of its own',
  properties: {
    type: string,
    title: string,
    status: integer,
    detail: string,
    code: string,
    fault: string,
  },
  required: ['type', 'title', 'status', 'detail', 'code'],
};
