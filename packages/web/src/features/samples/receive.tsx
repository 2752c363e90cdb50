import { type Row, rowWith } from '@provinghouse/contract';
import { useState } from 'react';
import { TextField } from '../../components/form-field.tsx';
import { RowForm } from '../../components/row-form.tsx';
import { minuteOf } from '../../lib/entry/bench-clock.ts';
import { dropDraft, type Typed, useDraft } from '../../lib/entry/draft.ts';
import { enter } from '../../lib/entry/enter.ts';
import { peopleRows } from '../../lib/entry/people-rows.ts';
import { usePerson } from '../../lib/entry/person.ts';
import { today } from '../../lib/entry/today.ts';
import { expectationOf } from '../../lib/samples/against-claim.ts';
import { sizeTyped } from '../../lib/specification-of.ts';
import { text } from '../../lib/text.ts';
import { AgainstClaim } from './against-claim.tsx';
import { sampleColumns } from './sample-columns.tsx';
import type { Bench } from './use-bench.ts';

const words = text.samples.receive;

interface ReceiveProps {
  readonly bench: Bench;
  readonly onReceived: (sample: string) => void;
  readonly onCancel: () => void;
}

/** A sample as it arrived, with the first line of where it went: the two are entered together or not at all. */
export function Receive({ bench, onReceived, onCancel }: ReceiveProps) {
  const code = bench.campaign.campaign;
  const drafts = { row: `sample ${code}`, place: `sample ${code} place` };
  const person = usePerson();
  const [rest, setRest] = useDraft(drafts.place, { place: bench.samples.at(-1)?.moves[0]?.body.place ?? '' });
  const [isAsked, setAsked] = useState(false);
  const [isBusy, setBusy] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const place = (rest.place ?? '').trim();
  const keep = async (row: Row<'samples'>) => {
    setAsked(true);
    if (place === '') return;
    setBusy(true);
    const outcome = await receive(row, { bench, person, place });
    setBusy(false);
    if (!outcome.kept) return setFault(outcome.fault.detail);
    dropDraft(drafts.row);
    dropDraft(drafts.place);
    onReceived(row.sample);
  };
  return (
    <RowForm
      kind="samples"
      asked={sampleColumns(bench, true)}
      start={{
        received_on: today(),
        ...(bench.products.length === 1 ? { product: bench.products[0]?.product ?? '' } : {}),
      }}
      keep={words.keep}
      draft={drafts.row}
      isBusy={isBusy}
      check={({ sample }) => taken(bench, sample)}
      beside={(typed) => <Beside bench={bench} typed={typed} />}
      onKeep={(row) => void keep(row)}
      {...(bench.samples.length === 0 ? {} : { onCancel })}
    >
      <TextField
        label={words.place}
        hint={words.placeHint}
        value={rest.place ?? ''}
        fault={isAsked && place === '' ? words.placeFault : null}
        list={placesOf(bench)}
        onChange={(value) => setRest(() => ({ place: value }))}
      />
      {fault === null ? null : (
        <p className="form-fault" role="alert">
          {fault}
        </p>
      )}
    </RowForm>
  );
}

function taken({ samples }: Bench, sample: string) {
  const other = samples.find(({ held }) => held.id.toLowerCase() === sample.toLowerCase());
  return other ? { column: 'sample', fault: words.taken(other.held.id) } : null;
}

interface Receiving {
  readonly bench: Bench;
  readonly person: string | null;
  readonly place: string;
}

function receive(row: Row<'samples'>, { bench, person, place }: Receiving) {
  const { sample } = row;
  const move = { sample, move: 1, moved_at: minuteOf(new Date()), place, by: person, note: words.receipt };
  return enter(
    { book: bench.campaign.campaign, label: words.entering(sample) },
    {
      rows: {
        people: peopleRows(bench.people, person),
        samples: [{ ...row, received_by: person }],
        custody: [rowWith('custody', move)],
      },
    },
  );
}

/** Places that samples were put before. */
export function placesOf({ samples }: Bench): readonly string[] {
  return [...new Set(samples.flatMap(({ moves }) => moves.map(({ body }) => body.place)))];
}

function Beside({ bench, typed }: { readonly bench: Bench; readonly typed: Typed }) {
  const product = bench.products.find((one) => one.product === typed.product) ?? null;
  return (
    <section className="sample-beside" aria-label={words.beside} aria-live="polite">
      <h3>{words.beside}</h3>
      <AgainstClaim
        product={product}
        expected={expectationOf(product ?? undefined, bench.own)}
        length_m={sizeTyped(typed.length_m ?? '')}
        mass_kg={sizeTyped(typed.mass_kg ?? '')}
      />
    </section>
  );
}
