import type { BriefFinding, ProductBrief } from '@provinghouse/contract';
import { useMemo } from 'react';
import { type Expected, piecesToShow, type Reach, reachOf } from '../../lib/reach.ts';
import { text } from '../../lib/text.ts';
import { plannedFigure } from './planned-text.ts';

const words = text.brief.desk.reach;

interface ReachTableProps {
  /** Null while it is being worked out, or cannot be. */
  readonly brief: BriefFinding | null;
  readonly planned: number | null;
}

/** What numbers of pieces can show, before anything is pulled; the number that is planned stands out. */
export function ReachTable({ brief, planned }: ReachTableProps) {
  const hardest = useMemo(() => (brief === null ? null : hardestOf(brief.products)), [brief]);
  const reaches = useMemo(
    () => (hardest === null ? [] : piecesToShow(planned).map((pieces) => reachOf(pieces, hardest.expected))),
    [hardest, planned],
  );
  return (
    <section className="reach" aria-label={words.label}>
      <h3>{words.label}</h3>
      {hardest === null ? (
        <p className="soft">{words.later}</p>
      ) : (
        <>
          <div className="pad-scroll">
            <table className="leaf plan">
              <caption>{words.caption(hardest.product)}</caption>
              <thead>
                <tr>
                  {Object.entries(words.head).map(([name, head]) => (
                    <th key={name} scope="col" className="num">
                      {head}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {reaches.map((reach) => (
                  <ReachRow key={reach.pieces} reach={reach} isPlanned={reach.pieces === planned} />
                ))}
              </tbody>
            </table>
          </div>
          <p className="soft small">{words.notes}</p>
        </>
      )}
    </section>
  );
}

function ReachRow({ reach, isPlanned }: { readonly reach: Reach; readonly isPlanned: boolean }) {
  const cells = [
    ['mean', reach.mean, 'share'],
    ['share', reach.share, 'share'],
    ['allPass', reach.allPass, 'share'],
    ['held', reach.held, 'share'],
    ['told', reach.told_pct, '%'],
  ] as const;
  return (
    <tr className={isPlanned ? 'reach-planned' : undefined}>
      <th scope="row" className="num reach-count">
        {isPlanned ? <span className="small reach-mark">{words.planned} </span> : null}
        {reach.pieces}
      </th>
      {cells.map(([name, value, unit]) => (
        <td key={name} className="num">
          {value === null ? <span className="soft">{words.ifNone}</span> : <Shown value={value} unit={unit} />}
        </td>
      ))}
    </tr>
  );
}

function Shown({ value, unit }: { readonly value: number; readonly unit: string }) {
  const set = plannedFigure(value, unit);
  return (
    <span className="figure">
      {set.bound}
      {set.value}
      <span className="unit">{set.unit}</span>
    </span>
  );
}

/** The product with the least chance to be shown sound with a few pieces. */
function hardestOf(
  products: readonly ProductBrief[],
): { readonly product: string; readonly expected: Expected } | null {
  const all = products.flatMap((one) => {
    const expected = expectedOf(one);
    return expected === null ? [] : [{ product: one.product, expected, chance: reachOf(4, expected).mean ?? 0 }];
  });
  return all.toSorted((a, b) => a.chance - b.chance)[0] ?? null;
}

function expectedOf({ plans, minimum_kN }: ProductBrief): Expected | null {
  const assumed = plans.find(({ basis }) => basis === 'assumed');
  const mean_kN = assumed?.mean_kN.value ?? null;
  const cov_pct = assumed?.cov_pct.value ?? null;
  if (mean_kN === null || cov_pct === null || minimum_kN === null) return null;
  return { mean_kN, cov_pct, guard_kN: assumed?.guard_kN.value ?? 0, minimum_kN };
}
