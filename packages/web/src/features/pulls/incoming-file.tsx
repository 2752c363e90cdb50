import type { ColumnsAsked, TracePreview, TracePreviewRequest } from '@provinghouse/contract';
import { useEffect, useMemo, useState } from 'react';
import { instantOf, minuteOf, timeText } from '../../lib/entry/bench-clock.ts';
import { personHere } from '../../lib/entry/person.ts';
import { text } from '../../lib/text.ts';
import { ColumnTable, takenTwice } from './column-table.tsx';
import { nextPull, pieceInName, tracePath } from './incoming.ts';
import { IncomingState } from './incoming-state.tsx';
import { PreviewReading } from './preview-reading.tsx';
import { PullFields } from './pull-fields.tsx';
import { type PullTyped, pullRow } from './pull-typed.ts';
import { Refusal } from './refusal.tsx';
import { type Desk, usualRig } from './use-desk.ts';
import { useKeeping } from './use-keeping.ts';
import { usePreview } from './use-preview.ts';
import { useUpload } from './use-upload.ts';

interface IncomingFileProps {
  readonly desk: Desk;
  readonly file: File;
  readonly isOpen: boolean;
  /** Name of a file above with the same bytes; null where there is none. */
  readonly sameAs: string | null;
  readonly onHere: (sha256: string) => void;
  readonly onOpen: () => void;
  readonly onAway: () => void;
  readonly onKept: (kept: { readonly pull: string; readonly piece: string }) => void;
}

/** One file that was dropped: sent, looked at, its columns settled, its piece confirmed, and only then accepted. */
export function IncomingFile(props: IncomingFileProps) {
  const { desk, file, isOpen, onHere } = props;
  const upload = useUpload(file);
  const incoming = useIncoming(props, upload.state === 'here' ? upload.sha256 : null);
  const sha256 = upload.state === 'here' ? upload.sha256 : null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: told once the bytes are here
  useEffect(() => {
    if (sha256 !== null) onHere(sha256);
  }, [sha256]);
  const { preview, isStale, fault } = incoming.seen;
  return (
    <li className="pulls-file" aria-label={file.name} data-open={isOpen || undefined}>
      <IncomingState {...props} upload={upload} seen={incoming.seen} />
      {isOpen && preview !== null && preview.fault === null ? (
        <form
          className="form"
          noValidate
          aria-busy={isStale}
          onSubmit={(event) => {
            event.preventDefault();
            incoming.accept();
          }}
        >
          <ColumnTable preview={preview} code={desk.code} rig={incoming.typed.rig} onChoose={incoming.setColumns} />
          <p className="soft pulls-stale" role="status">
            {isStale ? text.pulls.preview.stale : ''}
          </p>
          <PreviewReading preview={preview} name={file.name} />
          <SameBytes preview={preview} {...props} isMeant={incoming.isMeant} onMeant={incoming.setMeant} />
          <PullFields
            desk={desk}
            typed={incoming.typed}
            faults={incoming.keeping.faults}
            asksOverride={incoming.keeping.asksOverride}
            proposed={incoming.proposed}
            whenHint={text.pulls.fields.whenFromFile}
            onChange={incoming.change}
          />
          <Refusal code={desk.code} fault={incoming.keeping.refused ?? fault} />
          {incoming.stands === null ? null : (
            <p className="form-fault" role="alert">
              {incoming.stands}
            </p>
          )}
          <p className="form-keys">
            <button type="submit" className="press press-main" disabled={incoming.keeping.isOnItsWay}>
              {text.pulls.accept}
            </button>
          </p>
        </form>
      ) : null}
    </li>
  );
}

/** All that is chosen of a file before it is a pull. */
function useIncoming({ desk, file, sameAs, onKept }: IncomingFileProps, sha256: string | null) {
  const [typed, setTyped] = useState<PullTyped>(() => ({
    piece: '',
    pull: '',
    rig: usualRig(desk),
    operator: personHere() ?? '',
    when: timeText(minuteOf(new Date(file.lastModified))),
    note: '',
    second: '',
    override: '',
  }));
  const [ownPull, setOwnPull] = useState<string | null>(null);
  const [columns, setColumns] = useState<ColumnsAsked | null>(null);
  const [isMeant, setMeant] = useState(false);
  const [stands, setStands] = useState<string | null>(null);
  // Whichever file is accepted first takes the next code, and those that wait move on.
  const pull = ownPull ?? nextPull(desk.pulls.map(({ body }) => body.pull));
  const whole = { ...typed, pull };
  const seen = usePreview(desk.code, requestOf({ file, typed, columns, sha256 }));
  const keeping = useKeeping(desk, whole, (row) => onKept({ pull: row.pull, piece: row.piece }));
  const proposed = useMemo(
    () =>
      pieceInName(
        file.name,
        desk.pieces.map(({ piece }) => piece),
      ),
    [file.name, desk.pieces],
  );
  return {
    seen,
    keeping,
    proposed,
    typed: whole,
    change: ({ pull: own, ...change }: Partial<PullTyped>) => {
      if (own !== undefined) setOwnPull(own);
      // Another rig may have another habit, and what was settled for this one is no word on that.
      if (change.rig !== undefined && seen.preview?.profile != null) setColumns(null);
      setTyped((now) => ({ ...now, ...change }));
    },
    setColumns,
    isMeant,
    setMeant,
    stands,
    accept: () => {
      const against = standsAgainst(seen.preview, { isStale: seen.isStale, isMeant, sameAs });
      setStands(against);
      keeping.submit(() => {
        const path = tracePath(pull, file.name, seen.preview?.pathsTaken ?? []);
        const row = pullRow(whole, desk, { trace: path, ...columnCells(seen.preview) });
        return { row, files: sha256 === null ? [] : [{ path, sha256 }] };
      }, against === null);
    },
  };
}

interface Chosen {
  readonly file: File;
  readonly typed: PullTyped;
  readonly columns: ColumnsAsked | null;
  readonly sha256: string | null;
}

function requestOf({ file, typed, columns, sha256 }: Chosen): TracePreviewRequest | null {
  if (sha256 === null) return null;
  return {
    sha256,
    name: file.name.slice(0, 300),
    rig: typed.rig === '' ? null : typed.rig,
    piece: typed.piece === '' ? null : typed.piece,
    pulledAt: instantOf(typed.when),
    ...(columns === null ? {} : { columns }),
  };
}

interface Standing {
  readonly isStale: boolean;
  readonly isMeant: boolean;
  readonly sameAs: string | null;
}

/** Why the file cannot be accepted yet, whatever its fields say; null where it can. */
function standsAgainst(preview: TracePreview | null, { isStale, isMeant, sameAs }: Standing): string | null {
  if (preview === null || isStale) return text.pulls.fault.waiting;
  if (preview.questions.length > 0 || preview.reading === null || takenTwice(preview))
    return text.pulls.fault.questions;
  if ((preview.keptAs.length > 0 || sameAs !== null) && !isMeant) return text.pulls.same.missing;
  return null;
}

/** The columns as they are kept: only those that the header leaves open or somebody chose. */
function columnCells(preview: TracePreview | null) {
  const asked = preview?.asked;
  return {
    time_column: asked?.time ?? null,
    force_column: asked?.force ?? null,
    table_column: asked?.table ?? null,
    extension_column: asked?.extension ?? null,
  };
}

interface SameBytesProps extends Pick<IncomingFileProps, 'desk' | 'sameAs'> {
  readonly preview: TracePreview;
  readonly isMeant: boolean;
  readonly onMeant: (isMeant: boolean) => void;
}

/** The same recording dropped twice is most likely a slip of the hand. */
function SameBytes({ desk, sameAs, preview, isMeant, onMeant }: SameBytesProps) {
  const words = text.pulls.same;
  const told = [
    ...preview.keptAs.map(({ pull, piece, campaign }) =>
      words.kept(pull, piece, campaign === desk.code ? null : campaign),
    ),
    ...(sameAs === null ? [] : [words.waiting(sameAs)]),
  ];
  if (told.length === 0) return null;
  return (
    <div className="pulls-same" role="alert">
      {told.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <label className="pulls-tick">
        <input type="checkbox" checked={isMeant} onChange={(event) => onMeant(event.currentTarget.checked)} />{' '}
        {words.confirm}
      </label>
    </div>
  );
}
