import type { PieceFinding, ProductFinding } from '@provinghouse/contract';
import { quantityNames } from '@provinghouse/core';
import { certificateOn, type Evidence } from './evidence.ts';
import { list } from './wording.ts';

/** What a challenger would ask first: certificates out of date, limits of uncertain origin, pulls out of the method's window. */
export function doubtsOf(
  evidence: Evidence,
  products: readonly ProductFinding[],
  pieces: readonly PieceFinding[],
): string[] {
  return [...units(pieces), ...certificates(evidence), ...rates(pieces), ...origins(products), ...readers(pieces)];
}

/** Newtons keyed as kilonewtons, or the other way round, lie a factor of 1000 from every limit. */
function units(pieces: readonly PieceFinding[]): string[] {
  return pieces.flatMap(({ piece, judgements }) => {
    const force = judgements.find((judgement) => judgement.limit.quantity === 'breakingForce');
    const ratio = force?.measured && force.limit.lower ? force.measured.value / force.limit.lower : 1;
    if (ratio < 100 && ratio > 0.01) return [];
    return [
      `The breaking force of ${piece} is ${Number(ratio.toPrecision(2))} times its limit: see whether it is really in kN.`,
    ];
  });
}

function certificates({ rows }: Evidence): string[] {
  const used = [
    ...rows.pulls.map((pull) => ({ instrument: pull.rig, day: pull.pulled_at?.slice(0, 10) ?? null })),
    ...rows.gauging.map((reading) => ({ instrument: reading.instrument, day: reading.read_at?.slice(0, 10) ?? null })),
  ];
  const bad = used.filter((use) => !certificateOn(rows, use.instrument, use.day));
  const lines = bad.map(({ instrument, day }) =>
    day === null
      ? `${instrument} has no certificate in the record.`
      : `${instrument} had no certificate in force on ${day}.`,
  );
  return [...new Set(lines)].sort();
}

function rates(pieces: readonly PieceFinding[]): string[] {
  const outside = pieces.filter((piece) => (piece.pull?.reading?.shareInsideRateLimits ?? 1) < 0.9);
  if (outside.length === 0) return [];
  return [
    `The table speed left the method's window for more than a tenth of the loaded time on ${list(outside.map((piece) => piece.piece))}.`,
  ];
}

function origins(products: readonly ProductFinding[]): string[] {
  return products.flatMap((product) => {
    const weak = product.specification.limits.filter((limit) =>
      limit.provenance.flags.some((flag) => flag !== 'derived'),
    );
    const words = weak.map((limit) => `${quantityNames[limit.quantity]} (${limit.provenance.flags.join(', ')})`);
    return words.length === 0
      ? []
      : [`Limits used for ${product.product} rest on uncertain ground: ${list([...new Set(words)])}.`];
  });
}

function readers(pieces: readonly PieceFinding[]): string[] {
  const differ = pieces.filter((piece) => piece.examinersDiffer);
  return differ.length === 0
    ? []
    : [`The examiners read the break differently on ${list(differ.map((piece) => piece.piece))}.`];
}
