import type { PieceFinding } from '@provinghouse/contract';
import { Link } from 'wouter';
import { MeasuredOrigin } from '../../components/measured-origin.tsx';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { uncertaintyText } from '../../lib/figure.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { type FoundCell, FoundTable } from './found-table.tsx';
import { Found, FoundFigure } from './how-found.tsx';
import { zincMeanHow } from './zinc-how.ts';

const words = text.findings.product;
const { piecesHead: head } = words;
const { how } = text.findings;

interface PieceTableProps {
  readonly code: string;
  readonly product: string;
  readonly pieces: readonly PieceFinding[];
}

/** The pieces of a product: what each held, how it parted, where it stands. */
export function PieceTable({ code, product, pieces }: PieceTableProps) {
  return (
    <FoundTable
      title={words.pieces}
      note={words.piecesHow}
      file={`${code}-${product}-pieces`}
      className="found-pieces"
      columns={[
        { heading: head.piece, keys: ['piece'] },
        { heading: head.links, keys: ['free_links'], isNumber: true },
        { heading: head.area, keys: ['steel_area_mm2', 'steel_area_standard_uncertainty_mm2'], isNumber: true },
        { heading: head.force, keys: ['breaking_force_kN', 'expanded_uncertainty_kN'], isNumber: true },
        { heading: head.elongation, keys: ['elongation_pct', 'elongation_expanded_uncertainty_pct'], isNumber: true },
        { heading: head.use, keys: ['use', 'reasons'] },
        { heading: head.break, keys: ['position', 'mode'] },
        { heading: head.zinc, keys: ['zinc_mean_um', 'zinc_standard_uncertainty_um'], isNumber: true },
        { heading: head.standing, keys: ['standing'] },
      ]}
      groups={[{ key: product, rows: pieces.map((piece) => ({ key: piece.piece, cells: cellsOf(code, piece) })) }]}
    />
  );
}

function cellsOf(code: string, piece: PieceFinding): FoundCell[] {
  const { pull, breaks, zinc } = piece;
  const [read] = breaks;
  return [
    { shown: <Link href={hrefs.piece(code, piece.piece)}>{piece.piece}</Link>, values: [piece.piece] },
    {
      shown: (
        <Found
          title={`${piece.piece}, ${head.links}`}
          how={{ inputs: piece.sample, method: how.links, sure: how.exact }}
        >
          {piece.links}
        </Found>
      ),
      values: [piece.links],
    },
    areaCell(piece),
    {
      shown: pull?.maximum ? (
        <MeasuredOrigin measured={pull.maximum} name={`${piece.piece}, ${head.force}`} />
      ) : (
        text.none
      ),
      values: [pull?.maximum?.value ?? null, pull?.maximum?.expandedUncertainty ?? null],
    },
    {
      shown: pull?.elongation ? (
        <MeasuredOrigin measured={pull.elongation} name={`${piece.piece}, ${head.elongation}`} />
      ) : (
        text.none
      ),
      values: [pull?.elongation?.value ?? null, pull?.elongation?.expandedUncertainty ?? null],
    },
    {
      shown: <Use piece={piece} />,
      values: [pull?.use ?? null, pull === null ? null : pull.reasons.join(' ')],
    },
    {
      shown: read === undefined ? text.none : `${read.position}, ${read.mode}`,
      values: [read?.position ?? null, read?.mode ?? null],
    },
    {
      shown: (
        <FoundFigure
          title={`${piece.piece}, ${head.zinc}`}
          value={zinc?.mean_um ?? null}
          unit="um"
          how={zincMeanHow(zinc)}
        />
      ),
      values: [zinc?.mean_um ?? null, zinc?.standardUncertainty_um ?? null],
    },
    { shown: <VerdictMark verdict={piece.standing} />, values: [piece.standing] },
  ];
}

function areaCell({ piece, gauging, gaugingReadings }: PieceFinding): FoundCell {
  const area = gauging?.steelArea_mm2 ?? null;
  const u = gauging?.steelAreaUncertainty_mm2 ?? null;
  return {
    shown: (
      <FoundFigure
        title={`${piece}, ${head.area}`}
        value={area}
        unit="mm2"
        how={{
          inputs: how.areaFrom(gaugingReadings.length),
          method: how.area,
          sure: u === null ? text.origin.noUncertainty : how.areaSure(uncertaintyText(u, 'mm2')),
        }}
      />
    ),
    values: [area, u],
  };
}

function Use({ piece: { pull } }: { readonly piece: PieceFinding }) {
  if (pull === null) return <span className="soft">{words.notPulled}</span>;
  return (
    <>
      {words.use[pull.use]}
      {pull.reasons.map((reason) => (
        <span key={reason} className="line soft small">
          {reason}
        </span>
      ))}
    </>
  );
}
