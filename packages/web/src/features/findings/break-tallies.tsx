import type { PieceFinding, ProductFinding } from '@provinghouse/contract';
import { text } from '../../lib/text.ts';
import { PieceLines } from './counted-pieces.tsx';
import { type FoundCell, FoundTable } from './found-table.tsx';
import { Found } from './how-found.tsx';

const { how, breaksHead: head } = text.findings;

interface BreakTalliesProps {
  readonly code: string;
  readonly products: readonly ProductFinding[];
  readonly pieces: readonly PieceFinding[];
}

/** How the pieces of each product parted: by place, by mode, and by both; every count opens to its pieces. */
export function BreakTallies(given: BreakTalliesProps) {
  return (
    <>
      <Across {...given} part="position" title={text.findings.breaksByPosition} />
      <Across {...given} part="mode" title={text.findings.breaksByMode} />
      <ByBoth {...given} />
    </>
  );
}

interface AcrossProps extends BreakTalliesProps {
  readonly part: 'position' | 'mode';
  readonly title: string;
}

/** Products down, places or modes across. */
function Across({ code, products, pieces, part, title }: AcrossProps) {
  const names = [...new Set(products.flatMap((product) => product.breaks.map((tally) => tally[part])))].sort();
  return (
    <FoundTable
      title={title}
      file={`${code}-breaks-by-${part === 'position' ? 'place' : 'mode'}`}
      className="found-tally"
      columns={[
        { heading: head.product, keys: ['product'] },
        ...names.map((name) => ({ heading: name, keys: [name.replaceAll(/\W+/g, '_')], isNumber: true })),
        { heading: text.findings.breaksAll, keys: ['read'], isNumber: true },
      ]}
      groups={[
        {
          key: part,
          rows: products.map((product) => {
            const own = pieces.filter((piece) => piece.product === product.product);
            const read = own.filter((piece) => piece.breaks.length > 0);
            return {
              key: product.product,
              cells: [
                { shown: product.product, values: [product.product] },
                ...names.map((name) =>
                  countCell(
                    `${product.product}, ${name}`,
                    code,
                    read.filter((piece) => piece.breaks[0]?.[part] === name),
                  ),
                ),
                countCell(`${product.product}, ${text.findings.breaksAll}`, code, read),
              ],
            };
          }),
        },
      ]}
    />
  );
}

function countCell(title: string, code: string, pieces: readonly PieceFinding[]): FoundCell {
  const { length: count } = pieces;
  return {
    shown: count === 0 ? <span className="soft">0</span> : <Count title={title} code={code} pieces={pieces} />,
    values: [count],
  };
}

interface CountProps {
  readonly title: string;
  readonly code: string;
  readonly pieces: readonly PieceFinding[];
}

function Count({ title, code, pieces }: CountProps) {
  const inputs = <PieceLines code={code} pieces={pieces.map(({ piece }) => piece)} />;
  return (
    <Found title={title} how={{ inputs, method: how.tally, sure: how.tallySure }}>
      {pieces.length}
    </Found>
  );
}

/** Each place and mode that came up, the most frequent of a product first. */
function ByBoth({ code, products, pieces }: BreakTalliesProps) {
  return (
    <FoundTable
      title={text.findings.breaksBy}
      file={`${code}-breaks`}
      className="found-tally"
      columns={[
        { heading: head.product, keys: ['product'], isFileOnly: true },
        { heading: head.position, keys: ['place'] },
        { heading: head.mode, keys: ['mode'] },
        { heading: head.count, keys: ['pieces'], isNumber: true },
        { heading: head.share, keys: ['share_pct'], isNumber: true },
      ]}
      groups={products.map((product) => ({
        key: product.product,
        head: (
          <span className="found-group-head">
            <strong>{product.product}</strong>
            {product.breaks.length === 0 ? <span className="soft">{text.findings.breaksNone}</span> : null}
          </span>
        ),
        rows: rowsOf(code, product, pieces),
      }))}
    />
  );
}

function rowsOf(code: string, product: ProductFinding, pieces: readonly PieceFinding[]) {
  const all = product.breaks.reduce((sum, tally) => sum + tally.count, 0);
  return product.breaks.map(({ position, mode, count }) => {
    const own = pieces.filter(
      ({ product: of, breaks: [read] }) => of === product.product && read?.position === position && read.mode === mode,
    );
    const title = `${product.product}, ${position}, ${mode}`;
    return {
      key: `${position} ${mode}`,
      cells: [
        { shown: product.product, values: [product.product] },
        { shown: position, values: [position] },
        { shown: mode, values: [mode] },
        countCell(title, code, own),
        {
          shown: (
            <Found
              title={`${title}, ${head.share}`}
              how={{
                inputs: <PieceLines code={code} pieces={own.map(({ piece }) => piece)} />,
                method: how.tallyShare,
                sure: how.tallySure,
              }}
            >
              {Math.round((100 * count) / all)}
              <span className="unit">%</span>
            </Found>
          ),
          values: [(100 * count) / all],
        },
      ],
    };
  });
}
