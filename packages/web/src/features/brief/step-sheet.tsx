import { type ReactNode, useState } from 'react';
import { TextField } from '../../components/form-field.tsx';
import { SheetOver } from '../../components/sheet-over.tsx';
import { type CampaignStep, takeStep } from '../../lib/entry/enter.ts';
import { readRows } from '../../lib/entry/use-rows.ts';
import { text } from '../../lib/text.ts';

interface StepSheetProps {
  readonly code: string;
  readonly step: CampaignStep;
  readonly title: string;
  readonly doing: string;
  readonly why: string;
  readonly whyHint: string;
  readonly whyFault: string;
  /** To be ticked; left out, the reason is enough. */
  readonly consent?: { readonly words: string; readonly fault: string };
  readonly onDone: () => void;
  readonly children: ReactNode;
}

/** A step that is taken once: what it means, on what ground it is taken, and the consent to it. */
export function StepSheet(props: StepSheetProps) {
  const { code, step, title, doing, why: whyLabel, whyHint, whyFault, consent, onDone, children } = props;
  const [why, setWhy] = useState('');
  const [isTicked, setTicked] = useState(false);
  const [isAsked, setAsked] = useState(false);
  const [isBusy, setBusy] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const isSound = why.trim() !== '' && (!consent || isTicked);
  const take = async () => {
    setAsked(true);
    if (!isSound || isBusy) return;
    setBusy(true);
    const outcome = await takeStep({ book: code, label: doing }, step, why.trim());
    setBusy(false);
    // Where the answer to an earlier sending was lost, the step stands taken already.
    if (outcome.kept || (await isTaken(code, step))) onDone();
    else setFault(outcome.fault.detail);
  };
  return (
    <SheetOver title={title} onClose={onDone}>
      <form
        className="form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void take();
        }}
      >
        {children}
        <TextField
          label={whyLabel}
          hint={whyHint}
          value={why}
          fault={isAsked && why.trim() === '' ? whyFault : null}
          onChange={setWhy}
        />
        {consent ? (
          <>
            <label className="step-consent">
              <input type="checkbox" checked={isTicked} onChange={(event) => setTicked(event.currentTarget.checked)} />
              <span>{consent.words}</span>
            </label>
            {isAsked && !isTicked ? (
              <p className="form-fault" role="alert">
                {consent.fault}
              </p>
            ) : null}
          </>
        ) : null}
        {fault === null ? null : (
          <p className="form-fault" role="alert">
            {fault}
          </p>
        )}
        <p className="form-keys">
          <button type="submit" className="press press-main" aria-disabled={isBusy || undefined}>
            {title.replace('?', '')}
          </button>
          <button type="button" className="press" onClick={onDone}>
            {text.entry.form.cancel}
          </button>
        </p>
      </form>
    </SheetOver>
  );
}

async function isTaken(code: string, step: CampaignStep): Promise<boolean> {
  const found = await readRows(code, 'campaign');
  const row = 'rows' in found ? found.rows[0]?.body : undefined;
  return (step === 'unblind' ? row?.unblinded_at : row?.plan_frozen_at) != null;
}
