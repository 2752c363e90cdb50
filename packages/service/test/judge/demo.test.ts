import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import type { CampaignFinding, PieceFinding } from '@provinghouse/contract';
import { bringIn, judgeCampaign, type OpenRecord, openRecord } from '../../src/index.ts';

const demo = fileURLToPath(new URL('../../../../examples/sallow-reach', import.meta.url));

interface Truth {
  readonly piece: string;
  readonly maximumForce_kN: number;
  readonly timeAtParting_s: number;
  readonly elongation_pct: number;
  readonly sampleRate_Hz: number;
  readonly spikes: readonly unknown[];
}

/** The course of each simulated pull before transducer and recorder: the simulator's own account, not the reader's. */
const truths = (JSON.parse(readFileSync(`${demo}-truth.json`, 'utf8')) as { readonly pieces: readonly Truth[] }).pieces;

let home = '';
let record: OpenRecord;
let finding: CampaignFinding;

before(async () => {
  home = await mkdtemp(join(tmpdir(), 'provinghouse-'));
  record = await openRecord({ home });
  const { campaign } = await bringIn({ path: demo, who: 'tester', why: 'to be judged' }, record.effects);
  finding = await judgeCampaign({ campaign }, record.effects);
});

after(async () => {
  await record.close();
  await rm(home, { recursive: true, force: true });
});

function piece(name: string): PieceFinding {
  const found = finding.pieces.find((candidate) => candidate.piece === name);
  assert.ok(found, name);
  return found;
}

function product(name: string) {
  const found = finding.products.find((candidate) => candidate.product === name);
  assert.ok(found, name);
  return found;
}

test('every whole pull shows the true maximum within its stated uncertainty', () => {
  const whole = truths.filter((truth) => piece(truth.piece).pull?.use === 'value');
  assert.equal(whole.length, 27);
  for (const truth of whole) {
    const maximum = piece(truth.piece).pull?.maximum;
    assert.ok(maximum?.expandedUncertainty, truth.piece);
    assert.ok(
      Math.abs(maximum.value - truth.maximumForce_kN) <= maximum.expandedUncertainty,
      `${truth.piece} ${maximum.value}`,
    );
  }
});

test('what is only "at least" is never above the truth by more than its uncertainty', () => {
  const censored = truths.filter((truth) => piece(truth.piece).pull?.use === 'at least');
  assert.deepEqual(censored.map((truth) => truth.piece).sort(), ['FIR-10-2', 'FIR-10-3', 'FIR-10-4']);
  for (const truth of censored) {
    const maximum = piece(truth.piece).pull?.maximum;
    assert.ok(maximum && maximum.value - (maximum.expandedUncertainty ?? 0) <= truth.maximumForce_kN, truth.piece);
  }
});

test('elongation agrees with the truth within its stated uncertainty on every whole record', () => {
  for (const truth of truths) {
    const elongation = piece(truth.piece).pull?.elongation;
    if (!elongation || elongation.isAtLeast) continue;
    const room = elongation.expandedUncertainty ?? 0;
    assert.ok(
      Math.abs(elongation.value - truth.elongation_pct) <= room,
      `${truth.piece}: ${elongation.value}, ${truth.elongation_pct}, U ${room}`,
    );
  }
});

test('every spike put into the records is found before parting, and none besides', () => {
  for (const truth of truths) {
    assert.equal(piece(truth.piece).pull?.reading?.spikes.length, truth.spikes.length, truth.piece);
  }
});

test('a standstill of the valve is not the maximum', () => {
  const events = piece('DAMSON-10-2').pull?.reading?.events ?? [];
  const pause = events.find((event) => event.kind === 'pause');
  assert.ok(pause);
  assert.ok((piece('DAMSON-10-2').pull?.maximum?.value ?? 0) > pause.force_kN + 2);
});

test('the fat bar shows as ordinary steel, and its product conforms all the same', () => {
  const cedar = product('CEDAR-8');
  assert.equal(cedar.judgements.find((judgement) => judgement.quantity === 'breakingForce')?.verdict, 'conforms');
  assert.ok((cedar.split?.sizeFactor ?? 0) > 1.05);
  assert.ok((cedar.split?.steelFactor ?? 2) < 1);
});

test('a product near its limit is inconclusive on some pieces and fails on one', () => {
  const force = product('ELDER-10').judgements.find((judgement) => judgement.quantity === 'breakingForce');
  assert.equal(force?.verdict, 'does not conform');
  assert.deepEqual(force?.deciding, ['ELDER-10-3']);
  assert.ok((force?.counts.inconclusive ?? 0) >= 1);
});

test('pulls known only as "at least" are listed and stand in no mean', () => {
  const { n, atLeast } = product('FIR-10').breakingForce;
  assert.equal(n, 2);
  assert.deepEqual(atLeast.map((one) => one.piece).sort(), ['FIR-10-2', 'FIR-10-3', 'FIR-10-4']);
});

test('two products with close means are not called different', () => {
  const sentences = finding.comparisons.flatMap((comparison) => comparison.sentences);
  assert.ok(sentences.some((sentence) => sentence.includes('ASH-8 and BIRCH-8 overlap')));
});

test('every limit that rests on memory or stands in conflict is named among the doubts', () => {
  for (const { product: name, specification } of finding.products) {
    const weak = specification.limits.some((limit) => limit.provenance.flags.some((flag) => flag !== 'derived'));
    assert.equal(
      finding.doubts.some((doubt) => doubt.includes(`Limits used for ${name}`)),
      weak,
      name,
    );
  }
});

test('the same record gives the same finding', async () => {
  const again = await judgeCampaign({ campaign: finding.campaign.campaign }, record.effects);
  assert.deepEqual(again, finding);
});

test('no number of a finding is NaN or infinite', () => {
  const walk = (value: unknown, path: string): void => {
    if (typeof value === 'number') assert.ok(Number.isFinite(value), path);
    else if (value !== null && typeof value === 'object') {
      for (const [key, inner] of Object.entries(value)) walk(inner, `${path}.${key}`);
    }
  };
  walk(finding, 'finding');
});

test('a product whose pieces all pass may still be governed by its welds over a long chain', () => {
  const birch = product('BIRCH-8');
  assert.equal(birch.judgements.find((judgement) => judgement.quantity === 'breakingForce')?.verdict, 'conforms');
  const long = birch.longChain?.lengths.find((length) => length.length_m === 100);
  assert.match(long?.shares[0]?.mode ?? '', /weld/);
  assert.match(birch.longChain?.sentence ?? '', /weld/);
});

test('a long chain far beyond the pieces carries a loud warning', () => {
  for (const { longChain } of finding.products) assert.match(longChain?.warning ?? '', /CANNOT CARRY/);
});

test('two products with close means share a letter and are called not distinguishable', () => {
  const statistics = finding.comparisons.find((comparison) => comparison.nominalSize_mm === 8)?.statistics;
  const letters = (name: string) => statistics?.groups.find((group) => group.name === name)?.letters;
  assert.equal(letters('ASH-8'), letters('BIRCH-8'));
  assert.notEqual(letters('ASH-8'), letters('CEDAR-8'));
  assert.match(statistics?.sentences.alike ?? '', /Not distinguishable from one another: ASH-8 and BIRCH-8/);
});

test('the probability of conformity goes with the verdict', () => {
  for (const { judgements } of finding.pieces) {
    for (const { verdict, probability } of judgements) {
      if (probability === null) continue;
      if (verdict === 'conforms') assert.ok(probability > 0.95);
      if (verdict === 'does not conform') assert.ok(probability < 0.05);
    }
  }
});

test('the mean and nearly all pieces of a product are held against its minimum, and told apart from single pieces', () => {
  const { meanDecision, boundDecision } = product('ELDER-10').inference;
  assert.equal(meanDecision?.verdict, 'inconclusive');
  assert.equal(boundDecision?.verdict, 'does not conform');
  assert.equal(product('ASH-8').inference.meanDecision?.verdict, 'conforms');
  assert.match(product('ASH-8').inference.boundDecision?.doubts.join() ?? '', /longer tail downwards/);
});
