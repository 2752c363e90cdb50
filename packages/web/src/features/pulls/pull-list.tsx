import type { CampaignFinding, Row } from '@provinghouse/contract';
import { useState } from 'react';
import { Link } from 'wouter';
import { Figure } from '../../components/figure.tsx';
import { MeasuredOrigin } from '../../components/measured-origin.tsx';
import { timeText } from '../../lib/entry/bench-clock.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { type PlannedPiece, plannedList } from './planned-list.ts';
import { PullSheet } from './pull-sheet.tsx';
import type { Desk } from './use-desk.ts';

interface PullListProps {
  readonly desk: Desk;
  /** Null until the record is judged; the list does not wait for it. */
  readonly finding: CampaignFinding | null;
  readonly onChanged: () => void;
}

/** Every piece in the order of the plan, with the pulls made of it. */
export function PullList({ desk, finding, onChanged }: PullListProps) {
  const [opened, setOpened] = useState<string | null>(null);
  const words = text.pulls.list;
  const list = plannedList(desk);
  const held = desk.pulls.find(({ id }) => id === opened);
  const seed = desk.planned?.seed ?? null;
  const made = list.filter(({ pulls }) => pulls.length > 0).length;
  return (
    <>
      <p className="pulls-count">
        {words.made(made, list.length)}.{' '}
        <span className="soft">{seed === null ? words.undrawn : words.drawn(seed)}</span>
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls must be reached by the keyboard */}
      <section className="pad-scroll" aria-label={words.table} tabIndex={0}>
        <table className="leaf pulls-list" data-drawn={seed === null ? undefined : true}>
          <caption>{words.caption}</caption>
          <Head />
          <tbody>
            {list.map((one) => (
              <PieceRows key={one.piece} code={desk.code} one={one} finding={finding} onOpen={setOpened} />
            ))}
          </tbody>
        </table>
      </section>
      {held ? <PullSheet code={desk.code} held={held} onChanged={onChanged} onClose={() => setOpened(null)} /> : null}
    </>
  );
}

function Head() {
  const { head } = text.pulls.list;
  return (
    <thead>
      <tr>
        <th scope="col" className="num">
          {head.place}
        </th>
        {[head.piece, head.pull, head.on, head.when].map((name) => (
          <th key={name} scope="col">
            {name}
          </th>
        ))}
        <th scope="col" className="num">
          {head.maximum}
        </th>
        {[head.from, head.valid].map((name) => (
          <th key={name} scope="col">
            {name}
          </th>
        ))}
      </tr>
    </thead>
  );
}

interface PieceRowsProps {
  readonly code: string;
  readonly one: PlannedPiece;
  readonly finding: CampaignFinding | null;
  readonly onOpen: (pull: string) => void;
}

function PieceRows({ code, one, finding, onOpen }: PieceRowsProps) {
  const words = text.pulls.list;
  const named = (
    <>
      <td className="num">{one.place ?? ''}</td>
      <th scope="row">
        <Link href={hrefs.piece(code, one.piece)}>{one.piece}</Link>
        <span className="line soft small">{one.product}</span>
      </th>
    </>
  );
  if (one.pulls.length === 0)
    return (
      <tr data-next={one.isNext || undefined}>
        {named}
        <td colSpan={6} className={one.isNext ? 'pulls-next' : 'soft'}>
          {one.isNext ? words.next : words.waits}
        </td>
      </tr>
    );
  return one.pulls.map(({ id, body }, at) => (
    <tr key={id}>
      {at === 0 ? (
        named
      ) : (
        <>
          <td />
          <th scope="row" className="soft">
            {one.piece}
          </th>
        </>
      )}
      <td>
        <button type="button" className="opens" aria-label={words.open(body.pull)} onClick={() => onOpen(id)}>
          <span>{body.pull}</span>
        </button>
      </td>
      <td>
        {body.rig}
        <span className="line soft small">{body.operator ?? ''}</span>
      </td>
      <td>
        <When iso={body.pulled_at} />
      </td>
      <td className="num">
        <Maximum row={body} finding={finding} />
      </td>
      <td>
        {body.trace !== null ? words.recording : body.panel_maximum_kN !== null ? words.panel : words.nothing}
        {body.note === null ? null : <span className="line soft small pulls-note">{body.note}</span>}
      </td>
      <td className={body.valid ? undefined : 'pulls-invalid'}>
        {body.valid ? words.valid : words.invalid}
        {body.invalid_reason === null ? null : <span className="line small pulls-note">{body.invalid_reason}</span>}
      </td>
    </tr>
  ));
}

/** As the finding states it; a pull of which none speaks is listed only. */
function Maximum({ row, finding }: { readonly row: Row<'pulls'>; readonly finding: CampaignFinding | null }) {
  const words = text.pulls.list;
  if (finding === null) return <span className="soft">{words.reading}</span>;
  const piece = finding.pieces.find((one) => one.piece === row.piece);
  if (piece?.otherPulls.includes(row.pull)) return <span className="soft">{words.further}</span>;
  if (piece?.pull?.pull !== row.pull) return <span className="soft">{words.reading}</span>;
  const { maximum } = piece.pull;
  if (maximum === null) return <Figure value={null} unit="kN" />;
  return <MeasuredOrigin measured={maximum} name={text.piece.maximum} />;
}

function When({ iso }: { readonly iso: string | null }) {
  const [day, time] = whenText(iso).split(' ');
  if (iso === null) return <span className="soft">{whenText(iso)}</span>;
  return (
    <>
      {day}
      <span className="line soft small">{time}</span>
    </>
  );
}

/** Day and time on the clock of this bench. */
export function whenText(iso: string | null): string {
  return iso === null ? text.notRecorded : timeText(iso).slice(0, 16);
}
