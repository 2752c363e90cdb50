import { Link } from 'wouter';
import { ColumnHeads } from '../../components/column-heads.tsx';
import { Page, Section } from '../../components/page.tsx';
import { WhoHere } from '../../components/who-here.tsx';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import type { PulledPiece } from './pulled-pieces.ts';

interface BreakListProps {
  readonly code: string;
  readonly list: readonly PulledPiece[];
  readonly person: string | null;
}

/** The pieces pulled: who has read them, and nothing of what was read. */
export function BreakList({ code, list, person }: BreakListProps) {
  const words = text.breaks;
  const mine = list.filter((one) => one.mine.length > 0).length;
  const twice = list.filter((one) => one.others.length + Math.sign(one.mine.length) > 1).length;
  return (
    <Page
      title={words.title}
      mark={<span className="soft">{code}</span>}
      lead={
        <>
          <p>{words.lead}</p>
          {list.length === 0 || person === null ? null : <p>{words.progress(mine, twice, list.length)}</p>}
        </>
      }
    >
      <Section label={words.label} note={words.how}>
        {person === null && list.length > 0 ? (
          <div className="said-so">
            <p>{words.whoFirstList}</p>
            <div>
              <WhoHere />
            </div>
          </div>
        ) : null}
        {list.length === 0 ? <NothingPulled code={code} /> : <PulledTable code={code} list={list} />}
      </Section>
    </Page>
  );
}

function NothingPulled({ code }: { readonly code: string }) {
  const words = text.breaks;
  return (
    <div className="said-so">
      <p>{words.empty}</p>
      <p className="soft">{words.emptyCure}</p>
      <p className="form-keys">
        <Link className="press" href={hrefs.pulls(code)}>
          {words.toPulls}
        </Link>
        <Link className="press" href={hrefs.rigs()}>
          {words.toRig}
        </Link>
      </p>
    </div>
  );
}

function PulledTable({ code, list }: Omit<BreakListProps, 'person'>) {
  const { head, caption } = text.breaks;
  return (
    <div className="pad-scroll">
      <table className="leaf breaks-table pulled-list">
        <caption className="for-ears">{caption}</caption>
        <ColumnHeads names={[head.piece, head.pull, head.pulled, head.you, head.others, head.open]} />
        <tbody>
          {list.map((one) => (
            <PulledRow key={one.pull.pull} code={code} one={one} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function PulledRow({ code, one }: { readonly code: string; readonly one: PulledPiece }) {
  const { pull, piece, mine, others } = one;
  const words = text.breaks;
  const isRead = mine.length > 0;
  return (
    <tr>
      <th scope="row">
        <Link href={hrefs.piece(code, piece.piece)}>{piece.piece}</Link>
      </th>
      <td>{pull.pull}</td>
      <td>{pull.pulled_at?.slice(0, 16).replace('T', ' ') ?? text.notRecorded}</td>
      <td>{isRead ? words.byYou : <strong>{words.notRead}</strong>}</td>
      <td>{words.byOthers(others.length)}</td>
      <td>
        <Link
          className="press press-small"
          href={hrefs.breakOf(code, pull.pull)}
          aria-label={isRead ? words.showNamed(piece.piece) : words.readNamed(piece.piece)}
        >
          {isRead ? words.show : words.read}
        </Link>
      </td>
    </tr>
  );
}
