import { type Field, type Table, type TableName, tables } from '@provinghouse/contract';

/** JSON Schemas (draft 7, as the framework checks them) of what is entered and answered. */

export const campaignCode = { type: 'string', pattern: '^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$' } as const;
const shortText = { type: 'string', minLength: 1, maxLength: 200 } as const;
const reason = { type: 'string', maxLength: 2000 } as const;
const perhaps = { type: ['string', 'null'], maxLength: 2000 } as const;
const path = { type: 'string', minLength: 1, maxLength: 400 } as const;
const sha256 = { type: 'string', pattern: '^[0-9a-f]{64}$' } as const;

const kinds = Object.keys(tables) as TableName[];
export const kind = { type: 'string', enum: kinds } as const;

const cellTypes = {
  string: 'string',
  number: 'number',
  integer: 'integer',
  boolean: 'boolean',
  date: 'string',
  datetime: 'string',
};

/** One cell. Bounds and patterns are left to the table, which names the cure where the framework would only refuse. */
function cellSchema({ type, required, description }: Field): object {
  const plain = cellTypes[type];
  return { type: required ? plain : [plain, 'null'], description };
}

/** A row of a table with all its columns. */
export function rowSchema(name: TableName): object {
  const { fields }: Table = tables[name];
  const properties = Object.fromEntries(Object.entries(fields).map(([column, field]) => [column, cellSchema(field)]));
  return { type: 'object', properties, required: Object.keys(fields), additionalProperties: false };
}

const rowsOfTables = {
  type: 'object',
  properties: Object.fromEntries(
    kinds
      .filter((name) => name !== 'campaign')
      .map((name) => [name, { type: 'array', maxItems: 5000, items: rowSchema(name) }]),
  ),
  additionalProperties: false,
};

function body(properties: Readonly<Record<string, object>>, required: readonly string[]): object {
  return { type: 'object', properties, required, additionalProperties: false };
}

const fileEntry = body({ path, sha256 }, ['path', 'sha256']);
const revisionOf = { kind, id: { type: 'string', maxLength: 2000 }, revision: { type: 'integer', minimum: 1 } };

export const entryBodies = {
  commission: body({ campaign: rowSchema('campaign'), who: shortText }, ['campaign', 'who']),
  enter: body(
    {
      rows: rowsOfTables,
      files: { type: 'array', maxItems: 200, items: fileEntry },
      who: shortText,
      why: perhaps,
      override: perhaps,
    },
    ['rows', 'who'],
  ),
  correct: body({ ...revisionOf, body: { type: 'object' }, who: shortText, why: reason }, [
    'kind',
    'id',
    'revision',
    'body',
    'who',
    'why',
  ]),
  withdraw: body({ ...revisionOf, who: shortText, why: reason }, ['kind', 'id', 'revision', 'who', 'why']),
  nothing: body({}, []),
  step: body({ who: shortText, why: reason }, ['who', 'why']),
} as const;

const ledgerSeq = { type: 'integer', description: 'place of the last entry in the ledger: it is kept' };

export const entryAnswers = {
  kept: body({ ledgerSeq }, ['ledgerSeq']),
  keptCampaign: body({ ledgerSeq, campaign: { type: 'string' } }, ['ledgerSeq', 'campaign']),
  keptRevision: body({ ledgerSeq, revision: { type: 'integer' } }, ['ledgerSeq', 'revision']),
  heldFile: body({ sha256, size: { type: 'integer' } }, ['sha256', 'size']),
  files: body(
    {
      files: {
        type: 'array',
        items: body({ path, sha256, size: { type: 'integer' }, media: { type: 'string' } }, [
          'path',
          'sha256',
          'size',
          'media',
        ]),
      },
      next: { type: ['string', 'null'], description: 'what to ask the next page with, as `after`' },
    },
    ['files', 'next'],
  ),
  rows: body(
    {
      rows: {
        type: 'array',
        items: body(
          {
            id: { type: 'string' },
            revision: { type: 'integer' },
            at: { type: 'string', description: 'when it was written last, ISO 8601' },
            who: { type: 'string' },
            body: { type: 'object', additionalProperties: true, description: 'the row, all columns of its table' },
          },
          ['id', 'revision', 'at', 'who', 'body'],
        ),
      },
      next: { type: ['integer', 'null'], description: 'what to ask the next page with, as `after`' },
    },
    ['rows', 'next'],
  ),
} as const;

export const pageQuery = {
  type: 'object',
  properties: {
    after: { type: 'integer', minimum: -1, default: -1 },
    limit: { type: 'integer', minimum: 1, maximum: 2000, default: 500 },
  },
  additionalProperties: false,
} as const;

export const filesQuery = {
  type: 'object',
  properties: {
    under: { type: 'string', maxLength: 400, default: '', description: 'how the paths asked for begin' },
    after: { type: 'string', maxLength: 400, default: '' },
    limit: pageQuery.properties.limit,
  },
  additionalProperties: false,
} as const;
