import { readTypedNumber } from '@provinghouse/core';
import { useState } from 'react';
import { TextField } from '../../components/form-field.tsx';
import { SheetOver } from '../../components/sheet-over.tsx';
import { minuteOf, timeText } from '../../lib/entry/bench-clock.ts';
import { personHere } from '../../lib/entry/person.ts';
import { text } from '../../lib/text.ts';
import { nextPull } from './incoming.ts';
import { PullFields } from './pull-fields.tsx';
import { type PullTyped, pullRow } from './pull-typed.ts';
import { Refusal } from './refusal.tsx';
import { type Desk, rigsOf, usualRig } from './use-desk.ts';
import { useKeeping } from './use-keeping.ts';

interface PanelFormProps {
  readonly desk: Desk;
  readonly onDone: (kept: { readonly pull: string; readonly piece: string } | null) => void;
}

/** A maximum read off the panel by eye, with an uncertainty of its own. */
export function PanelForm({ desk, onDone }: PanelFormProps) {
  const words = text.pulls.panel;
  const [typed, setTyped] = useState<PullTyped>(() => blankPull(desk));
  const [maximum, setMaximum] = useState('');
  const [step, setStep] = useState<string | null>(null);
  const [own, setOwn] = useState<string | null>(null);
  const [isAsked, setAsked] = useState(false);
  const keeping = useKeeping(desk, typed, ({ pull, piece }) => onDone({ pull, piece }));
  const resolution = rigsOf(desk).find(({ rig }) => rig.instrument === typed.rig)?.rig.resolution ?? null;
  const stepTyped = step ?? (resolution === null ? '' : String(resolution));
  const suggested = suggestedUncertainty(above0(stepTyped));
  const uncertainty = own ?? suggested ?? '';
  const [force, spread] = [above0(maximum), above0(uncertainty)];
  const numberFault = (value: number | null) => (isAsked && value === null ? text.pulls.fault.number : null);
  const submit = () => {
    setAsked(true);
    const cells = { panel_maximum_kN: force, panel_uncertainty_kN: spread };
    keeping.submit(() => ({ row: pullRow(typed, desk, cells) }), force !== null && spread !== null);
  };
  return (
    <SheetOver title={words.title} onClose={() => onDone(null)}>
      <p>{words.words}</p>
      <form
        className="form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          submit();
        }}
      >
        <div className="form-fields pulls-panel">
          <TextField
            label={words.maximum}
            unit="kN"
            isNumber
            value={maximum}
            fault={numberFault(force)}
            onChange={setMaximum}
          />
          <TextField label={words.step} hint={words.stepHint} unit="kN" isNumber value={stepTyped} onChange={setStep} />
          <TextField
            label={words.uncertainty}
            hint={suggested === null ? words.noStep : words.suggestion(suggested, stepTyped)}
            unit="kN"
            isNumber
            value={uncertainty}
            fault={numberFault(spread)}
            onChange={setOwn}
          />
        </div>
        <PullFields
          desk={desk}
          typed={typed}
          faults={keeping.faults}
          asksOverride={keeping.asksOverride}
          onChange={(change) => setTyped((now) => ({ ...now, ...change }))}
        />
        <Refusal code={desk.code} fault={keeping.refused} />
        <p className="form-keys">
          <button type="submit" className="press press-main" disabled={keeping.isOnItsWay}>
            {text.pulls.keepPanel}
          </button>
          <button type="button" className="press" onClick={() => onDone(null)}>
            {text.entry.form.cancel}
          </button>
        </p>
      </form>
    </SheetOver>
  );
}

function blankPull(desk: Desk): PullTyped {
  return {
    piece: '',
    pull: nextPull(desk.pulls.map(({ body }) => body.pull)),
    rig: usualRig(desk),
    operator: personHere() ?? '',
    when: timeText(minuteOf(new Date())),
    note: '',
    second: '',
    override: '',
  };
}

function above0(typed: string): number | null {
  const read = readTypedNumber(typed, { unit: 'kN', within: { least: 0, greatest: 999 } });
  return read.ok && read.value > 0 ? read.value : null;
}

/** One step either way, any place in it as likely: half-width over the root of three (JCGM 100:2008 4.3.7). To two significant digits. */
function suggestedUncertainty(step_kN: number | null): string | null {
  return step_kN === null ? null : String(Number((step_kN / Math.sqrt(3)).toPrecision(2)));
}
