import type { PieceFinding, ProductFinding } from '@provinghouse/contract';
import { text } from '../../lib/text.ts';
import { across, type StripDot, type StripRow, type StripScale, stripRows, stripScale } from './strip-scale.ts';

interface DotStripProps {
  readonly products: readonly ProductFinding[];
  readonly pieces: readonly PieceFinding[];
}

/** Breaking forces of the products, a mark for each piece, against the minimum and its guard band. */
export function DotStrip({ products, pieces }: DotStripProps) {
  const rows = stripRows(products, pieces);
  const scale = stripScale(rows);
  if (scale === null) return null;
  return (
    <figure className="strip">
      <figcaption>
        <h3>{text.findings.strip}</h3>
        <Legend />
      </figcaption>
      {rows.map((row) => (
        <Row key={row.product.product} row={row} scale={scale} />
      ))}
      <Ticks scale={scale} />
    </figure>
  );
}

function Row({ row, scale }: { readonly row: StripRow; readonly scale: StripScale }) {
  const { product, minimum_kN, guard_kN } = row;
  return (
    <div className="strip-row">
      <span className="strip-name">{product.product}</span>
      <svg
        className="strip-lane"
        role="img"
        aria-label={text.findings.stripLabel(product.product, product.breakingForce.sentence)}
      >
        <line className="strip-base" x1="0" x2="100%" y1="22" y2="22" />
        {minimum_kN !== null && guard_kN !== null ? (
          <rect
            className="strip-guard"
            x={across(scale, minimum_kN)}
            width={widthOf(scale, minimum_kN, guard_kN)}
            height="44"
          />
        ) : null}
        {minimum_kN === null ? null : (
          <line
            className="strip-minimum"
            x1={across(scale, minimum_kN)}
            x2={across(scale, minimum_kN)}
            y1="0"
            y2="44"
          />
        )}
        {row.dots.map((dot) => (
          <svg key={dot.piece} x={across(scale, dot.force_kN)} y="22" overflow="visible">
            <title>{dot.piece}</title>
            <DotShape use={dot.use} />
          </svg>
        ))}
      </svg>
    </div>
  );
}

function widthOf(scale: StripScale, from: number, to: number): string {
  return `${(100 * Math.max(0, to - from)) / (scale.to - scale.from)}%`;
}

/** Counted: filled. At least: filled, with an arrow towards where the true value lies. Left out: hollow. */
function DotShape({ use }: { readonly use: StripDot['use'] }) {
  if (use === 'none') return <circle className="dot dot-out" r="5.5" />;
  if (use === 'value') return <circle className="dot" r="5.5" />;
  return (
    <>
      <circle className="dot" r="3.5" />
      <path className="dot-arrow" d="M3 0H17M12 -4.5 17.5 0 12 4.5" />
    </>
  );
}

function Ticks({ scale }: { readonly scale: StripScale }) {
  return (
    <div className="strip-row strip-ticks" aria-hidden="true">
      <span className="strip-name unit">kN</span>
      <svg className="strip-lane" aria-hidden="true">
        {scale.ticks.map((tick) => (
          <g key={tick}>
            <line x1={across(scale, tick)} x2={across(scale, tick)} y1="0" y2="6" />
            <text x={across(scale, tick)} y="22" textAnchor="middle">
              {tick}
            </text>
          </g>
        ))}
      </svg>
    </div>
  );
}

function Legend() {
  const { legend } = text.findings;
  const marks = [
    ['value', legend.counted],
    ['at least', legend.atLeast],
    ['none', legend.excluded],
  ] as const;
  return (
    <p className="strip-legend soft small">
      {text.findings.stripHow}
      {marks.map(([use, name]) => (
        <span key={use} className="strip-key">
          <svg width="26" height="14" viewBox="-7 -7 26 14" aria-hidden="true">
            <DotShape use={use} />
          </svg>
          {name}
        </span>
      ))}
      <span className="strip-key">
        <svg width="14" height="14" aria-hidden="true">
          <line className="strip-minimum" x1="7" x2="7" y1="0" y2="14" />
        </svg>
        {legend.minimum}
      </span>
      <span className="strip-key">
        <svg width="18" height="14" aria-hidden="true">
          <rect className="strip-guard" width="18" height="14" />
        </svg>
        {legend.guard}
      </span>
    </p>
  );
}
