import { text } from '../../lib/text.ts';

/** A piece in its place; the rig only where it was pulled. */
export interface PlacedPiece {
  readonly position: number;
  readonly product: string;
  readonly rig: string | null;
}

interface OrderLanesProps {
  readonly label: string;
  /** In a sentence, for whom the picture says nothing. */
  readonly sentence: string;
  readonly products: readonly string[];
  /** The first is drawn round, every other square. */
  readonly rigs: readonly string[];
  readonly placed: readonly PlacedPiece[];
  /** Places after which a block of the lot ends. */
  readonly blockEnds: readonly number[];
  readonly places: number;
}

const laneHeight = 22;
const step = 20;
const mark = 5.5;
const names = 104;
/** Of the words in it against those of the page. */
const scale = 1.25;

/** A lane for each product, a mark at each place of its pieces: an order kept product by product shows as runs. */
export function OrderLanes({ label, sentence, products, rigs, placed, blockEnds, places }: OrderLanesProps) {
  const width = names + places * step + mark;
  const height = products.length * laneHeight;
  const x = (position: number) => names + (position - 0.5) * step;
  const y = (product: string) => (products.indexOf(product) + 0.5) * laneHeight;
  return (
    <figure className="lanes">
      <figcaption>
        <h3>{label}</h3>
        {rigs.length > 1 ? <RigKey rigs={rigs} /> : null}
      </figcaption>
      <svg
        viewBox={`0 0 ${width} ${height}`}
        width={width * scale}
        height={height * scale}
        role="img"
        aria-label={`${label}. ${sentence}`}
      >
        {blockEnds.map((end) => (
          <line key={end} className="lanes-block" x1={x(end + 0.5)} x2={x(end + 0.5)} y1={0} y2={height} />
        ))}
        {products.map((product) => (
          <g key={product}>
            <line className="lanes-line" x1={names} x2={width} y1={y(product)} y2={y(product)} />
            <text x={0} y={y(product) + 4.5}>
              {product}
            </text>
          </g>
        ))}
        {placed.map(({ position, product, rig }) => (
          <Mark key={position} x={x(position)} y={y(product)} isRound={rig === null || rig === rigs[0]} />
        ))}
      </svg>
    </figure>
  );
}

interface MarkProps {
  readonly x: number;
  readonly y: number;
  readonly isRound: boolean;
}

function Mark({ x, y, isRound }: MarkProps) {
  if (isRound) return <circle className="lanes-mark" cx={x} cy={y} r={mark} />;
  return <rect className="lanes-other" x={x - mark} y={y - mark} width={2 * mark} height={2 * mark} />;
}

function RigKey({ rigs: [first, ...others] }: { readonly rigs: readonly string[] }) {
  return (
    <p className="lanes-key soft small">
      <svg viewBox="0 0 12 12" aria-hidden="true">
        <circle className="lanes-mark" cx={6} cy={6} r={5} />
      </svg>
      {text.brief.onRig(first ?? '')}
      <svg viewBox="0 0 12 12" aria-hidden="true">
        <rect className="lanes-other" x={1} y={1} width={10} height={10} />
      </svg>
      {text.brief.onRig(others.join(', '))}
    </p>
  );
}
