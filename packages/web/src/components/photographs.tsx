import './photographs.css';
import { type Row, type RowHeld, rowWith } from '@provinghouse/contract';
import { useId, useState } from 'react';
import { fileAddress } from '../lib/entry/book.ts';
import { enter, sendFile } from '../lib/entry/enter.ts';
import { peopleRows } from '../lib/entry/people-rows.ts';
import { usePerson } from '../lib/entry/person.ts';
import { type RowsState, useRows } from '../lib/entry/use-rows.ts';
import { text } from '../lib/text.ts';
import { Withdrawal } from './correction.tsx';
import { SheetOver } from './sheet-over.tsx';

interface PhotographsProps {
  readonly book: string;
  /** What they show: a piece, or a sample. */
  readonly of: Pick<Row<'photographs'>, 'piece'> | Pick<Row<'photographs'>, 'sample'>;
  /** Written with each photograph added here. */
  readonly caption: string | null;
  /** Begins the name of the file in place of what it shows: in a blind campaign the name must not tell. */
  readonly stem?: string | undefined;
}

/** The photographs of a piece or a sample, and where further ones are taken or chosen. */
export function Photographs({ book, of, caption, stem }: PhotographsProps) {
  const held = useRows(book, 'photographs');
  const what = 'piece' in of ? of.piece : of.sample;
  if (held.state === 'reading') return <p className="soft">{text.loading}</p>;
  if (held.state === 'at fault') return <p className="form-fault">{held.fault.detail}</p>;
  const shown = held.rows.filter(({ body }) => what === ('piece' in of ? body.piece : body.sample));
  return (
    <div className="photographs">
      {shown.length === 0 ? (
        <p className="soft">
          {text.photograph.none} <span className="line">{text.photograph.noneCure}</span>
        </p>
      ) : (
        <ul>
          {shown.map((row) => (
            <li key={row.id}>
              <Photograph book={book} row={row} what={what ?? ''} />
            </li>
          ))}
        </ul>
      )}
      <AddPhotographs book={book} of={of} what={what ?? ''} caption={caption} stem={stem} />
    </div>
  );
}

interface PhotographProps {
  readonly book: string;
  readonly row: RowHeld<'photographs'>;
  readonly what: string;
}

function Photograph({ book, row, what }: PhotographProps) {
  const [sheet, setSheet] = useState<'large' | 'take out' | null>(null);
  const { file, caption, by, taken_at } = row.body;
  const words = text.photograph;
  const alt = words.alt(what, caption);
  const address = fileAddress(book, file);
  return (
    <figure>
      <button type="button" className="photograph" onClick={() => setSheet('large')}>
        <img src={address} alt={`${alt}. ${words.large}`} loading="lazy" />
      </button>
      <figcaption>
        {caption ?? file.slice(file.lastIndexOf('/') + 1)}
        <span className="line soft small">{words.takenBy(by, taken_at)}</span>
      </figcaption>
      {sheet === 'large' ? (
        <SheetOver title={alt} onClose={() => setSheet(null)}>
          <img className="photograph-large" src={address} alt={alt} />
          <p className="form-keys">
            <button type="button" className="press press-main" onClick={() => setSheet(null)}>
              {words.close}
            </button>
            <a className="press" href={address} target="_blank" rel="noreferrer">
              {words.file}
            </a>
            <button type="button" className="press" onClick={() => setSheet('take out')}>
              {text.entry.correction.withdraw}
            </button>
          </p>
        </SheetOver>
      ) : null}
      {sheet === 'take out' ? (
        <Withdrawal book={book} kind="photographs" held={row} what={alt} onDone={() => setSheet(null)} />
      ) : null}
    </figure>
  );
}

/** Endings of the pictures that a screen can show, by their media type. */
const endings: Readonly<Record<string, string>> = { 'image/jpeg': 'jpg', 'image/png': 'png', 'image/webp': 'webp' };

interface AddProps extends PhotographsProps {
  readonly what: string;
}

function AddPhotographs({ book, of, what, caption, stem }: AddProps) {
  const id = useId();
  const person = usePerson();
  const people = useRows(book, 'people');
  const [sending, setSending] = useState(0);
  const [faults, setFaults] = useState<readonly string[]>([]);
  const words = text.photograph;
  const add = async (files: readonly File[]) => {
    setFaults([]);
    setSending(files.length);
    for (const file of files) {
      const fault = await keepPhotograph(file, { book, of, what, caption, stem, person, people });
      if (fault !== null) setFaults((now) => [...now, fault]);
      setSending((left) => left - 1);
    }
  };
  return (
    <div className="photographs-add">
      <label className="press" htmlFor={id}>
        {words.add}
      </label>
      <input
        id={id}
        className="for-ears"
        type="file"
        accept={Object.keys(endings).join(',')}
        capture="environment"
        multiple
        onChange={({ currentTarget }) => {
          void add([...(currentTarget.files ?? [])]);
          currentTarget.value = '';
        }}
      />
      <span role="status">{sending > 0 ? words.taking(sending) : null}</span>
      {faults.map((fault) => (
        <p key={fault} className="form-fault" role="alert">
          {fault}
        </p>
      ))}
    </div>
  );
}

interface Keeping extends AddProps {
  readonly person: string | null;
  readonly people: RowsState<'people'>;
}

/** Sends one file and enters its row; the words of what went wrong, or null. */
async function keepPhotograph(
  file: File,
  { book, of, what, caption, stem, person, people }: Keeping,
): Promise<string | null> {
  const ending = endings[file.type];
  if (ending === undefined) return text.photograph.notAPicture(file.name);
  const sent = await sendFile(file);
  if (!sent.ok) return text.photograph.notSent(file.name, sent.fault.detail);
  const { sha256 } = sent.record;
  const name = (stem ?? what).replaceAll(/[^\w.-]+/g, '-');
  // The same picture under the same name is the same photograph; another one never takes its place.
  const path = `photographs/${name}-${sha256.slice(0, 10)}.${ending}`;
  const taken_at = new Date(file.lastModified).toISOString().replace(/\.\d+Z$/, 'Z');
  const row = rowWith('photographs', { ...of, file: path, caption, by: person, taken_at });
  const added =
    people.state === 'read'
      ? peopleRows(
          people.rows.map(({ body }) => body),
          person,
        )
      : [];
  const outcome = await enter(
    { book, label: text.photograph.entry(what) },
    { rows: { people: added, photographs: [row] }, files: [{ path, sha256 }] },
  );
  return outcome.kept ? null : text.photograph.notSent(file.name, outcome.fault.detail);
}
