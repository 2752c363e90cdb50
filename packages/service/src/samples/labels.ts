import { InputError } from '@provinghouse/core';
import { type LabelSheet, type PieceLabel, renderLabels } from '@provinghouse/publish';
import type { Effects } from '../effects.ts';
import { knownCampaign, rowsOf } from '../entry/index.ts';

export interface LabelsAsked {
  /** Codes of the pieces, in the order of the labels; empty for every piece of the campaign. */
  readonly pieces: readonly string[];
  readonly sheet: LabelSheet;
  /** Labels of the first sheet that were used before. */
  readonly used: number;
  readonly withCuttingMarks: boolean;
  /** Where the record is served, as the browser sees it. */
  readonly origin: string;
}

/**
 * Labels of pieces as a PDF. A blind campaign prints the bare codes until it is unblinded, also before its plan is frozen: the label
 * stays on the piece.
 * @throws InputError `campaign/unknown`, `entry/piece-unknown`; as `renderLabels`
 */
export async function labelsOf(code: string, asked: LabelsAsked, { store, now }: Effects): Promise<Uint8Array> {
  const campaign = await knownCampaign(store, code);
  const pieces = await rowsOf(store, code, 'pieces');
  const wanted = asked.pieces.length === 0 ? pieces.map(({ piece }) => piece) : asked.pieces;
  const isBare = campaign.blinding === 'blind' && campaign.unblinded_at === null;
  const sizes = isBare ? new Map<string, number>() : await sizesOf(code, store);
  const labels = wanted.map((name): PieceLabel => {
    const row = pieces.find(({ piece }) => piece === name);
    if (!row)
      throw new InputError(
        'entry/piece-unknown',
        `The campaign holds no piece "${name}". Choose among those that are cut.`,
        { piece: name },
      );
    return { piece: name, links: isBare ? null : row.links, nominalSize_mm: sizes.get(row.sample) ?? null };
  });
  const { sheet, origin, used, withCuttingMarks } = asked;
  const printedOn = now().toISOString().slice(0, 10);
  return renderLabels({ campaign: code, labels, sheet, origin, used, withCuttingMarks, printedOn }).pdf;
}

async function sizesOf(code: string, store: Effects['store']): Promise<ReadonlyMap<string, number>> {
  const products = new Map((await rowsOf(store, code, 'products')).map((row) => [row.product, row.nominal_size_mm]));
  const samples = await rowsOf(store, code, 'samples');
  return new Map(
    samples.flatMap(({ sample, product }) => {
      const size = products.get(product);
      return size === undefined ? [] : [[sample, size] as const];
    }),
  );
}
