import type { PlannedNumber, ProductFinding, ShareBound } from '@provinghouse/contract';
import { piecesToBoundFraction, proofRun } from '@provinghouse/core';
import { piecesSource } from './planned-pieces.ts';

const confidence = 0.95;
const reliability = 0.95;
const given = { name: 'confidence', value: confidence, unit: 'share', source: 'common practice' };

/** What passes say about the share of pieces that hold: no distribution is assumed, and a single pass says little. */
export function passesOf(product: ProductFinding): ShareBound {
  const pieces = product.pieces.length;
  const needed = piecesToBoundFraction({ reliability, confidence });
  return {
    ifAllPass: bound({ n: pieces, failures: 0 }, piecesSource),
    found: foundOf(product),
    piecesFor95: {
      value: needed.pieces,
      unit: '',
      sentence: needed.sentence,
      method: needed.method,
      inputs: [given, { name: 'share that holds', value: reliability, unit: 'share', source: 'common practice' }],
    },
  };
}

/** A piece that is inconclusive did not pass. */
function foundOf({ judgements }: ProductFinding): PlannedNumber | null {
  const force = judgements.find(({ quantity }) => quantity === 'breakingForce');
  if (!force) return null;
  const { conforms, inconclusive, 'does not conform': failed } = force.counts;
  const n = conforms + inconclusive + failed;
  return n === 0 ? null : bound({ n, failures: inconclusive + failed }, 'judged on the breaking force');
}

function bound(run: { readonly n: number; readonly failures: number }, source: string): PlannedNumber {
  const { reliability: value, method, sentence } = proofRun(run, { confidence });
  return {
    value,
    unit: 'share',
    sentence,
    method,
    inputs: [
      { name: 'pieces', value: run.n, unit: '', source },
      { name: 'pieces that do not pass', value: run.failures, unit: '', source },
      given,
    ],
  };
}
