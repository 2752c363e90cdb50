import type { RulebookEntry } from '@provinghouse/core';
import { useId, useState } from 'react';
import type { OwnControl } from '../../components/row-form.tsx';
import { text } from '../../lib/text.ts';

const words = text.brief.desk.claims;

interface SpecificationFieldProps {
  readonly given: OwnControl;
  readonly index: readonly RulebookEntry[];
}

/** The standards of the Rulebook, searched by word, one of them chosen. The grade is let go where the next one does not have it. */
export function SpecificationField({ given, index }: SpecificationFieldProps) {
  const id = useId();
  const [search, setSearch] = useState('');
  const { value, fault = null, label, typed } = given;
  const found = index.filter((entry) => entry.id === value || holds(entry, search));
  const choose = (entry: RulebookEntry) => {
    given.onChange(entry.id);
    const grade = typed.grade ?? '';
    if (entry.grades.length > 0 && !entry.grades.includes(grade))
      given.onOther('grade', entry.grades.length === 1 ? (entry.grades[0] ?? '') : '');
    if (entry.grades.length === 0) given.onOther('grade', '');
  };
  return (
    <fieldset
      className="specification-field"
      data-fault={fault === null ? undefined : true}
      aria-describedby={fault === null ? undefined : `${id}-fault`}
    >
      <legend>{label}</legend>
      <label className="for-ears" htmlFor={`${id}-search`}>
        {words.search}
      </label>
      <input
        id={`${id}-search`}
        type="search"
        value={search}
        placeholder={words.search}
        autoComplete="off"
        aria-describedby={`${id}-count`}
        onChange={(event) => setSearch(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key !== 'Enter') return;
          // Enter takes the only one left, and keeps nothing that is half filled in.
          event.preventDefault();
          const hits = index.filter((entry) => holds(entry, search));
          if (hits.length === 1 && hits[0]) choose(hits[0]);
        }}
      />
      <p id={`${id}-count`} className="form-hint" role="status">
        {found.length === 0 ? words.noneFound : words.found(found.length, index.length)}
      </p>
      <div className="specification-list">
        {found.map((entry) => (
          <label key={entry.id} className="specification-one">
            <input type="radio" name={id} checked={entry.id === value} onChange={() => choose(entry)} />
            <span>
              <strong>{entry.standard}</strong> {entry.isOwn ? <span className="badge">{words.own}</span> : null}
              <span className="line soft small">{entry.title}</span>
            </span>
          </label>
        ))}
      </div>
      {fault === null ? null : (
        <p id={`${id}-fault`} className="form-fault" role="alert">
          {fault}
        </p>
      )}
    </fieldset>
  );
}

function holds({ id, standard, title, edition }: RulebookEntry, search: string): boolean {
  const all = `${id} ${standard} ${title} ${edition}`.toLowerCase();
  return search
    .toLowerCase()
    .split(/\s+/)
    .every((word) => all.includes(word));
}
