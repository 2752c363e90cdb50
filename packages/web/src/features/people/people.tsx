import type { RowHeld } from '@provinghouse/contract';
import { useState } from 'react';
import { ColumnHeads } from '../../components/column-heads.tsx';
import { Correction } from '../../components/correction.tsx';
import { AtFault, Reading } from '../../components/notice.tsx';
import { Page, Section } from '../../components/page.tsx';
import { type AskedColumn, RowForm } from '../../components/row-form.tsx';
import { bench } from '../../lib/entry/book.ts';
import { enter } from '../../lib/entry/enter.ts';
import { personHere, setPersonHere, usePerson } from '../../lib/entry/person.ts';
import { useRows } from '../../lib/entry/use-rows.ts';
import { text } from '../../lib/text.ts';

const { fields } = text.kit;
const rest: readonly AskedColumn[] = [
  { column: 'name', label: fields.name },
  { column: 'role', label: fields.role },
];
const asked: readonly AskedColumn[] = [{ column: 'person', label: fields.person }, ...rest];

/** Everybody of this bench. */
export default function People() {
  const people = useRows(bench, 'people');
  if (people.state === 'reading') return <Reading />;
  if (people.state === 'at fault') return <AtFault fault={people.fault} again={people.again} />;
  return (
    <Page title={text.people.title} lead={<p>{text.people.lead}</p>}>
      <Section label={text.people.list}>
        {people.rows.length === 0 ? (
          <>
            <p>{text.people.empty}</p>
            <p className="soft">{text.people.emptyCure}</p>
          </>
        ) : (
          <PeopleTable people={people.rows} />
        )}
      </Section>
      <Section label={text.people.add}>
        {/* A new form once somebody was added. */}
        <NewPerson key={people.rows.length} people={people.rows} />
      </Section>
    </Page>
  );
}

type HeldPeople = readonly RowHeld<'people'>[];

function PeopleTable({ people }: { readonly people: HeldPeople }) {
  const here = usePerson();
  const [corrected, setCorrected] = useState<RowHeld<'people'> | null>(null);
  const { head } = text.people;
  return (
    <>
      <table className="leaf">
        <ColumnHeads names={[head.person, head.name, head.role, head.since, text.entry.form.change]} />
        <tbody>
          {people.map((held) => (
            <tr key={held.id}>
              <th scope="row">{held.body.person}</th>
              <td>{held.body.name}</td>
              <td>{held.body.role ?? <span className="soft">{text.notRecorded}</span>}</td>
              <td className="figure">{held.at.slice(0, 10)}</td>
              <td>
                <span className="row-keys">
                  {here === held.body.person ? (
                    <span className="soft">{text.people.here}</span>
                  ) : (
                    <button type="button" className="press" onClick={() => setPersonHere(held.body.person)}>
                      {text.people.isMe}
                      <span className="for-ears"> {held.body.person}</span>
                    </button>
                  )}
                  <button type="button" className="press" onClick={() => setCorrected(held)}>
                    {text.entry.correction.open}
                    <span className="for-ears"> {held.body.person}</span>
                  </button>
                </span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {corrected === null ? null : (
        <Correction
          book={bench}
          kind="people"
          held={corrected}
          asked={rest}
          what={corrected.body.person}
          onDone={() => setCorrected(null)}
        />
      )}
    </>
  );
}

function NewPerson({ people }: { readonly people: HeldPeople }) {
  return (
    <RowForm
      kind="people"
      asked={asked}
      start={{}}
      keep={text.people.keep}
      check={(row) => (people.some(({ id }) => id === row.person) ? text.people.taken(row.person) : null)}
      onKeep={(row) => {
        // Whoever adds themselves first is who is at the bench.
        if (personHere() === null) setPersonHere(row.person);
        void enter({ book: bench, label: `${text.people.title}: ${row.person}` }, { rows: { people: [row] } });
      }}
    />
  );
}
