import './piece-list.css';
import { Link } from 'wouter';
import { Page, Section } from '../../components/page.tsx';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import type { DeskState } from './desk-state.ts';
import type { PieceAtDesk } from './gauging-desk.ts';
import type { GaugingPlan } from './gauging-plan.ts';
import { nextPiece, readCount } from './gauging-progress.ts';
import { PlanForm } from './plan-form.tsx';
import { RefusedReadings } from './refused-readings.tsx';

const words = text.gaugingDesk;

interface PieceListProps {
  readonly desk: DeskState;
  readonly plan: GaugingPlan;
  readonly onPlan: (plan: GaugingPlan) => void;
  /** A piece that was asked for and is not there. */
  readonly unknown: string | null;
}

/** Every piece with how much of its schedule is read, and which is next. */
export function PieceList({ desk, plan, onPlan, unknown }: PieceListProps) {
  const { code, pieces } = desk;
  const next = nextPiece(pieces, null);
  const total = pieces.reduce((sum, { progress }) => sum + progress.places.length, 0);
  return (
    <Page title={words.title} mark={<span className="soft">{code}</span>} lead={<p>{words.lead}</p>}>
      <RefusedReadings desk={desk} />
      <Section label={words.list.label} note={words.list.how}>
        {unknown === null ? null : <p className="lead-in">{words.paste.unknownPiece(unknown)}.</p>}
        {pieces.length === 0 ? (
          <Empty code={code} />
        ) : (
          <>
            <p className="gauging-go">
              {next === null ? (
                words.list.allDone
              ) : (
                <Link className="press press-main" href={hrefs.gaugingOf(code, next)}>
                  {words.list.next(next)}
                </Link>
              )}
            </p>
            <PieceTable code={code} pieces={pieces} />
          </>
        )}
      </Section>
      {pieces.length === 0 ? null : (
        <Section label={words.plan.label} note={words.plan.how}>
          <PlanForm plan={plan} onPlan={onPlan} total={total} />
        </Section>
      )}
    </Page>
  );
}

function Empty({ code }: { readonly code: string }) {
  return (
    <>
      <p>{words.list.empty}</p>
      <p className="soft">{words.list.emptyCure}</p>
      <p className="form-keys">
        <Link className="press" href={hrefs.samples(code)}>
          {words.list.toSamples}
        </Link>
      </p>
    </>
  );
}

function PieceTable({ code, pieces }: { readonly code: string; readonly pieces: readonly PieceAtDesk[] }) {
  const { head, caption } = words.list;
  return (
    <div className="pad-scroll">
      <table className="leaf gauging-list">
        <caption className="for-ears">{caption}</caption>
        <thead>
          <tr>
            <th scope="col">{head.piece}</th>
            <th scope="col">{head.product}</th>
            <th scope="col" className="num">
              {head.links}
            </th>
            <th scope="col">{head.read}</th>
            <th scope="col">{head.open}</th>
          </tr>
        </thead>
        <tbody>
          {pieces.map((one) => (
            <tr key={one.piece}>
              <th scope="row">
                <Link href={hrefs.piece(code, one.piece)}>{one.piece}</Link>
              </th>
              <td>{one.product?.product ?? words.list.unknownProduct}</td>
              <td className="num">{one.held.body.links}</td>
              <td>
                <ReadSoFar at={one} />
              </td>
              <td>
                <Link
                  className="press press-small"
                  href={hrefs.gaugingOf(code, one.piece)}
                  aria-label={words.list.goNamed(one.piece)}
                >
                  {words.list.go}
                </Link>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function ReadSoFar({ at }: { readonly at: PieceAtDesk }) {
  const read = readCount(at.progress);
  const total = at.progress.places.length;
  const further = at.readings.length - read;
  return (
    <span className="gauging-share">
      <svg viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true">
        <rect className="gauging-share-all" width="100" height="8" />
        <rect className="gauging-share-read" width={total === 0 ? 0 : (100 * read) / total} height="8" />
      </svg>
      <span>
        {words.list.read(read, total)}
        {read === total ? <span className="soft"> {words.list.done}</span> : null}
        {further > 0 ? <span className="soft small"> {words.list.further(further)}</span> : null}
      </span>
    </span>
  );
}
