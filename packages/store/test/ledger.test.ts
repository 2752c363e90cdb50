import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { DatabaseSync } from 'node:sqlite';
import { type TestContext, test } from 'node:test';
import fc from 'fast-check';
import { bringInCampaign, canonicalJson, type Json, ledgerEntries, type Store, verifyLedger } from '../src/index.ts';
import { dialects } from './dialects.ts';
import { sampleCampaign } from './sample-campaign.ts';

for (const { name, open } of dialects) {
  test(`${name}: the chain of a campaign verifies, and its head is the hash of the last entry`, async (t) => {
    const { db } = await open(t);
    const { entries } = await bringInCampaign(db, sampleCampaign());
    const ledger = await ledgerEntries(db, 'SAMPLE');
    const check = await verifyLedger(db, 'SAMPLE');
    assert.deepEqual(check, { ok: true, entries, head: ledger.at(-1)?.hash, brokenAt: null, disagreements: [] });
  });

  test(`${name}: a hash can be recomputed with nothing but SHA-256 and sorted JSON`, async (t) => {
    const { db } = await open(t);
    await bringInCampaign(db, sampleCampaign());
    let previous = '0'.repeat(64);
    for (const { hash, ...entry } of await ledgerEntries(db, 'SAMPLE')) {
      assert.equal(entry.previous_hash, previous);
      const sorted = JSON.stringify(entry, Object.keys(entry).sort());
      assert.equal(hash, createHash('sha256').update(sorted, 'utf8').digest('hex'));
      previous = hash;
    }
  });

  test(`${name}: whatever the words of a reason are, the chain verifies and the words are kept`, async (t) => {
    const { db } = await open(t);
    let round = 0;
    const words = fc.oneof(
      fc.string({ unit: 'grapheme' }),
      fc.string({ unit: 'binary' }),
      fc.constantFrom('\ud800', 'a\u0000b', "'; drop table ledger; --"),
    );
    const law = fc.asyncProperty(words, words, async (who, why) => {
      round += 1;
      await bringInCampaign(db, { ...sampleCampaign(`C${round}`), who, why });
      const [entry] = await ledgerEntries(db, `C${round}`, { limit: 1 });
      assert.deepEqual({ who: entry?.who, why: entry?.why }, { who: who.toWellFormed(), why: why.toWellFormed() });
      assert.ok((await verifyLedger(db, `C${round}`)).ok);
    });
    await fc.assert(law, { seed: 7, numRuns: 40 });
  });

  test(`${name}: the ledger refuses to be changed, shortened or written over`, async (t) => {
    const { db } = await open(t);
    await bringInCampaign(db, sampleCampaign());
    const [first] = await ledgerEntries(db, 'SAMPLE');
    assert.ok(first);
    const change = db.updateTable('ledger').set({ why: 'another' }).where('seq', '=', 1);
    const removal = db.deleteFrom('ledger').where('seq', '=', 1);
    const replacement = db.replaceInto('ledger').values({ ...first, why: 'another' });
    for (const query of [change, removal, replacement]) await assert.rejects(query.execute(), /append-only/);
    assert.ok((await verifyLedger(db, 'SAMPLE')).ok);
  });
}

/** A second hand on the file, with the triggers taken off: what somebody would do who wants to change the past. */
async function tampered(t: TestContext): Promise<{ store: Store; raw: DatabaseSync }> {
  const [sqlite] = dialects;
  assert.ok(sqlite);
  const store = await sqlite.open(t);
  await bringInCampaign(store.db, sampleCampaign());
  const raw = new DatabaseSync(store.path);
  t.after(() => raw.close());
  for (const table of ['ledger', 'blob'])
    for (const change of ['update', 'delete', 'replacement']) raw.exec(`drop trigger ${table}_no_${change}`);
  return { store, raw };
}

const columns = ['at', 'who', 'action', 'kind', 'record', 'why', 'after', 'previous_hash', 'hash'];

test('any letter altered in any column of any entry is found at that entry', async (t) => {
  const { store, raw } = await tampered(t);
  const count = (await ledgerEntries(store.db, 'SAMPLE')).length;
  const law = fc.asyncProperty(
    fc.integer({ min: 1, max: count }),
    fc.constantFrom(...columns),
    fc.nat(),
    async (seq, column, at) => {
      const row = raw.prepare(`select ${column} as text from ledger where seq = ?`).get(seq);
      const text = String(row?.text);
      const place = at % text.length;
      const altered = `${text.slice(0, place)}${text[place] === '~' ? '!' : '~'}${text.slice(place + 1)}`;
      raw.prepare(`update ledger set ${column} = ? where seq = ?`).run(altered, seq);
      const { ok, brokenAt } = await verifyLedger(store.db, 'SAMPLE');
      raw.prepare(`update ledger set ${column} = ? where seq = ?`).run(text, seq);
      assert.deepEqual({ ok, brokenAt }, { ok: false, brokenAt: seq });
    },
  );
  await fc.assert(law, { seed: 7, numRuns: 60 });
  assert.ok((await verifyLedger(store.db, 'SAMPLE')).ok);
});

const tampering = [
  { what: 'an entry taken out', statement: 'delete from ledger where seq = 3', brokenAt: 3 },
  {
    what: 'the last entry taken off',
    statement: 'delete from ledger where seq = (select max(seq) from ledger)',
    brokenAt: 'last',
  },
  { what: 'a null turned into a value', statement: "update ledger set before = '{}' where seq = 2", brokenAt: 2 },
  {
    what: 'two entries swapped',
    statement:
      'update ledger set seq = case seq when 4 then -5 when 5 then -4 end where seq in (4, 5); update ledger set seq = -seq where seq < 0',
    brokenAt: 4,
  },
] as const;

for (const { what, statement, brokenAt } of tampering) {
  test(`${what} is found`, async (t) => {
    const { store, raw } = await tampered(t);
    const { entries } = await verifyLedger(store.db, 'SAMPLE');
    raw.exec(statement);
    const check = await verifyLedger(store.db, 'SAMPLE');
    assert.deepEqual(
      { ok: check.ok, brokenAt: check.brokenAt },
      { ok: false, brokenAt: brokenAt === 'last' ? entries : brokenAt },
    );
  });
}

const besides = [
  {
    what: 'a row changed beside the ledger',
    statement: `update record set body = replace(body, '8.001', '8.9') where kind = 'gauging'`,
    says: /gauging .*: the row is not what entry/,
  },
  {
    what: 'a row taken away',
    statement: "delete from record where kind = 'breaks' and position = 0",
    says: /breaks .*: entry \d+ tells of it, but it is gone/,
  },
  {
    what: 'a row slipped in',
    statement:
      "insert into record select campaign, kind, 'P-009', 9, 1, body, ledger_seq from record where kind = 'pulls' limit 1",
    says: /pulls P-009: the ledger does not know this row/,
  },
  {
    what: 'a byte of a trace changed',
    statement: `update blob set bytes = cast('time_s,force_kN' || char(10) || '0,9' || char(10) as blob) where size = 20`,
    says: /traces\/P-001.csv: the bytes kept/,
  },
  {
    what: 'a photograph pointed to another',
    statement:
      "update attachment set sha256 = (select sha256 from blob where size = 4) where path = 'photographs/BIRCH-8-1.png'",
    says: /BIRCH-8-1.png: the file is not what entry/,
  },
] as const;

for (const { what, statement, says } of besides) {
  test(`${what} is found although the chain is whole`, async (t) => {
    const { store, raw } = await tampered(t);
    raw.exec(statement);
    const { ok, brokenAt, disagreements } = await verifyLedger(store.db, 'SAMPLE');
    assert.deepEqual({ ok, brokenAt, count: disagreements.length }, { ok: false, brokenAt: null, count: 1 });
    assert.match(disagreements[0] ?? '', says);
  });
}

test('canonical JSON has one spelling, whatever the order of keys', () => {
  const law = fc.property(fc.dictionary(fc.string(), fc.jsonValue()), (value) => {
    const object = value as Record<string, Json>;
    const reversed = Object.fromEntries(Object.entries(object).reverse());
    assert.equal(canonicalJson(reversed), canonicalJson(object));
    assert.equal(canonicalJson(JSON.parse(canonicalJson(object))), canonicalJson(object));
  });
  fc.assert(law, { seed: 7, numRuns: 300 });
});
