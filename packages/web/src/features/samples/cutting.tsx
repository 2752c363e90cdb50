import type { CutRequest } from '@provinghouse/contract';
import { useState } from 'react';
import { ChoiceField, TextField } from '../../components/form-field.tsx';
import { cutPieces } from '../../lib/entry/cut.ts';
import { cutLength_m } from '../../lib/samples/account.ts';
import { text } from '../../lib/text.ts';
import type { Bench, SampleSeen } from './use-bench.ts';

const words = text.samples.cut;

interface CuttingProps {
  readonly bench: Bench;
  readonly seen: SampleSeen;
}

/** Cuts the sample into pieces; their codes are the record's to give. */
export function Cutting({ bench, seen }: CuttingProps) {
  const { campaign } = bench;
  const [count, setCount] = useState(campaign.pieces_per_product === null ? '' : String(campaign.pieces_per_product));
  const [links, setLinks] = useState(String(bench.pieces.at(-1)?.body.links ?? ''));
  const [over, setOver] = useState<string>(bench.pieces.at(-1)?.body.gauged_over ?? '');
  const [note, setNote] = useState('');
  const [isAsked, setAsked] = useState(false);
  const [isBusy, setBusy] = useState(false);
  const [said, setSaid] = useState<{ readonly fault: boolean; readonly words: string } | null>(null);
  const counted = whole(count, 200);
  const linked = whole(links, 10_000);
  const cut = async () => {
    setAsked(true);
    if (counted === null || linked === null || isBusy) return;
    setBusy(true);
    const gaugedOver = over === 'zinc' || over === 'bare steel' ? over : null;
    const asked: Omit<CutRequest, 'who'> = {
      sample: seen.held.id,
      count: counted,
      links: linked,
      gaugedOver,
      note: note.trim() === '' ? null : note.trim(),
      piecesBefore: seen.pieces.length,
    };
    const outcome = await cutPieces(campaign.campaign, asked);
    setBusy(false);
    setSaid(
      outcome.kept
        ? { fault: false, words: words.done(outcome.pieces.join(', ')) }
        : { fault: true, words: outcome.fault.detail },
    );
    if (!outcome.kept) return;
    setAsked(false);
    setCount('');
    setNote('');
  };
  return (
    <form
      className="form sample-cutting"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void cut();
      }}
    >
      <p className="soft">{campaign.blinding === 'blind' ? words.codesBlind : words.codesOpen(nextCode(seen))}</p>
      <div className="form-fields">
        <TextField
          label={words.count}
          isNumber
          value={count}
          fault={isAsked && counted === null ? words.countFault : null}
          onChange={setCount}
        />
        <TextField
          label={words.links}
          hint={words.linksHint}
          isNumber
          value={links}
          fault={isAsked && linked === null ? words.linksFault : null}
          onChange={setLinks}
        />
        <ChoiceField
          label={words.over}
          value={over}
          choices={['zinc', 'bare steel'].map((value) => ({ value, label: value }))}
          empty={text.entry.form.none}
          onChange={setOver}
        />
        <TextField label={words.note} value={note} onChange={setNote} />
      </div>
      <TooLong seen={seen} count={counted} links={linked} />
      <p className="form-keys">
        <button type="submit" className="press press-main" aria-disabled={isBusy || undefined}>
          {words.keep}
        </button>
      </p>
      {said === null ? null : (
        <p className={said.fault ? 'form-fault' : 'sample-said'} role={said.fault ? 'alert' : 'status'}>
          {said.words}
        </p>
      )}
    </form>
  );
}

function whole(typed: string, greatest: number): number | null {
  const value = Number(typed.trim());
  return typed.trim() !== '' && Number.isInteger(value) && value >= 1 && value <= greatest ? value : null;
}

/** As the record will give it, unless a piece was taken out: it remembers those too. */
function nextCode({ held, pieces }: SampleSeen): string {
  const stem = `${held.id}-`;
  const numbers = pieces.flatMap(({ id }) => (id.startsWith(stem) ? [Number(id.slice(stem.length)) || 0] : []));
  return `${stem}${Math.max(0, ...numbers) + 1}`;
}

interface TooLongProps {
  readonly seen: SampleSeen;
  readonly count: number | null;
  readonly links: number | null;
}

/** Said before it is cut: more links than the length received can hold. */
function TooLong({ seen, count, links }: TooLongProps) {
  if (count === null || links === null) return null;
  const received_m = seen.held.body.length_m;
  const wanted = Array.from({ length: count }, () => ({ links, gauge_length_mm: null }));
  const cut_m = cutLength_m([...seen.pieces.map(({ body }) => body), ...wanted], seen.expected.pitch_mm);
  if (received_m === null || cut_m === null || cut_m <= received_m) return null;
  return (
    <p className="form-fault" role="status">
      {words.long(cut_m.toFixed(2), String(received_m))}
    </p>
  );
}
