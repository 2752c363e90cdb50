import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { test } from 'node:test';
import { describeApi, problemKinds } from '@provinghouse/server';
import { clientTypes, typesFile } from '../tools/api-types/make.ts';

interface Operation {
  readonly operationId: string;
  readonly responses: Readonly<Record<string, unknown>>;
}

interface Described {
  readonly openapi: string;
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
}

test('the types of the client are those of the document the server serves', async () => {
  assert.equal(await readFile(typesFile, 'utf8'), await clientTypes(), 'make them anew: node tools/api-types/make.ts');
});

test('every operation has a name of its own, an answer, and a problem for everything else', async () => {
  const { openapi, paths } = (await describeApi()) as Described;
  assert.match(openapi, /^3\.1\./);
  const operations = Object.values(paths).flatMap((item) => Object.values(item));
  assert.ok(operations.length > 20);
  assert.equal(new Set(operations.map(({ operationId }) => operationId)).size, operations.length);
  for (const { operationId, responses } of operations)
    assert.ok('200' in responses && 'default' in responses, operationId);
});

test('every problem the server can answer with is told in the reference, with its status, and no other', async () => {
  const page = await readFile(new URL('../docs/reference/api.md', import.meta.url), 'utf8');
  const told = [...page.matchAll(/^\| `([a-z-]+)` \| (\d+) \|/gm)].map(([, code, status]) => [code, Number(status)]);
  assert.deepEqual(
    told,
    Object.entries(problemKinds).map(([code, { status }]) => [code, status]),
  );
});
