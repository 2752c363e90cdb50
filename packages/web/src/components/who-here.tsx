import { useState } from 'react';
import { bench } from '../lib/entry/book.ts';
import { setPersonHere, usePerson } from '../lib/entry/person.ts';
import { useRows } from '../lib/entry/use-rows.ts';
import { text } from '../lib/text.ts';
import { TextField } from './form-field.tsx';
import { SheetOver } from './sheet-over.tsx';

/** Who is at this bench: said once, shown always, written beside everything entered. */
export function WhoHere() {
  const person = usePerson();
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <button type="button" className="ground who-here" onClick={() => setOpen(true)}>
        {person === null ? (
          text.entry.who.none
        ) : (
          <span>
            <span className="soft small">{text.entry.who.label}</span> {person}
          </span>
        )}
      </button>
      {isOpen ? <WhoSheet start={person ?? ''} onClose={() => setOpen(false)} /> : null}
    </>
  );
}

function WhoSheet({ start, onClose }: { readonly start: string; readonly onClose: () => void }) {
  const [name, setName] = useState(start);
  const people = useRows(bench, 'people');
  const known = people.state === 'read' ? people.rows.map(({ body }) => body.person) : [];
  const choose = (person: string) => {
    if (person.trim() === '') return;
    setPersonHere(person.trim());
    onClose();
  };
  return (
    <SheetOver title={text.entry.who.title} onClose={onClose}>
      <p>{text.entry.who.words}</p>
      {known.length === 0 ? null : (
        <fieldset className="who-known">
          <legend>{text.entry.who.known}</legend>
          {known.map((person) => (
            <button key={person} type="button" className="press" onClick={() => choose(person)}>
              {person}
            </button>
          ))}
        </fieldset>
      )}
      <form
        className="form"
        onSubmit={(event) => {
          event.preventDefault();
          choose(name);
        }}
      >
        <TextField label={text.entry.who.field} value={name} onChange={setName} />
        <p className="form-keys">
          <button type="submit" className="press press-main">
            {text.entry.who.keep}
          </button>
          <button type="button" className="press" onClick={onClose}>
            {text.entry.form.cancel}
          </button>
        </p>
      </form>
    </SheetOver>
  );
}
