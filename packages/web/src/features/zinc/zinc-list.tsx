import { Link } from 'wouter';
import { Figure } from '../../components/figure.tsx';
import { Page, Section } from '../../components/page.tsx';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { surveyOf, type ZincRows } from './zinc-rows.ts';

interface ZincListProps {
  readonly code: string;
  readonly rows: ZincRows;
}

/** The pieces with what was read of their zinc so far. */
export function ZincList({ code, rows }: ZincListProps) {
  const words = text.zinc;
  return (
    <Page title={words.title} mark={<span className="soft">{code}</span>} lead={<p>{words.lead}</p>}>
      <Section label={words.label} note={words.how}>
        {rows.pieces.length === 0 ? (
          <>
            <p>{words.empty}</p>
            <p className="soft">{words.emptyCure}</p>
            <p className="form-keys">
              <Link className="press" href={hrefs.samples(code)}>
                {words.toSamples}
              </Link>
            </p>
          </>
        ) : (
          <PieceTable code={code} rows={rows} />
        )}
      </Section>
    </Page>
  );
}

function PieceTable({ code, rows }: ZincListProps) {
  const { head, caption } = text.zinc;
  const pulled = new Set(rows.pulls.map(({ body }) => body.piece));
  const byPiece = Map.groupBy(
    rows.zinc.map(({ body }) => body),
    ({ piece }) => piece,
  );
  return (
    <div className="pad-scroll">
      <table className="leaf zinc-list">
        <caption className="for-ears">{caption}</caption>
        <thead>
          <tr>
            <th scope="col">{head.piece}</th>
            {[head.readings, head.mean, head.least, head.adherence, head.flaked].map((name) => (
              <th key={name} scope="col" className="num">
                {name}
              </th>
            ))}
            <th scope="col">{head.open}</th>
          </tr>
        </thead>
        <tbody>
          {rows.pieces.map(({ body: { piece } }) => {
            const survey = surveyOf(byPiece.get(piece) ?? []);
            return (
              <tr key={piece}>
                <th scope="row">
                  <Link href={hrefs.piece(code, piece)}>{piece}</Link>{' '}
                  <span className="soft small">{pulled.has(piece) ? text.zinc.pulled : text.zinc.notPulled}</span>
                </th>
                <td className="num">{survey?.readings ?? 0}</td>
                <td className="num">
                  <Figure value={rounded(survey?.mean_um)} unit="um" />
                </td>
                <td className="num">
                  <Figure value={rounded(survey?.leastLinkMean_um)} unit="um" />
                </td>
                <td className="num">{survey?.worstAdherence ?? text.none}</td>
                <td className="num">
                  <Figure value={survey?.greatestFlakedShare_pct ?? null} unit="%" />
                </td>
                <td>
                  <Link
                    className="press press-small"
                    href={hrefs.zincOf(code, piece)}
                    aria-label={text.zinc.openNamed(piece)}
                  >
                    {text.zinc.open}
                  </Link>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

function rounded(value: number | null | undefined): number | null {
  return value === null || value === undefined ? null : Math.round(10 * value) / 10;
}
