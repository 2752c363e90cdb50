import { useState } from 'react';
import { Link } from 'wouter';
import { ChoiceField, TextField } from '../../components/form-field.tsx';
import { correctCells } from '../../lib/entry/enter.ts';
import { setPersonHere } from '../../lib/entry/person.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import type { DeskState } from './desk-state.ts';
import type { PieceAtDesk } from './gauging-desk.ts';
import { sendAgain } from './gauging-log.ts';
import type { LengthKit } from './use-length-kit.ts';

const words = text.gaugingDesk;

interface ReadingSettingsProps {
  readonly desk: DeskState;
  readonly at: PieceAtDesk;
  /** Something that was missing was said: back to the field. */
  readonly onReady: () => void;
}

/** What is wanting before anything can be read, and why it is read without a certificate: above the field, always in sight. */
export function ReadingNeeds({ desk, onReady }: Omit<ReadingSettingsProps, 'at'>) {
  const { kit, person } = desk;
  if (kit.choices.length === 0)
    return (
      <p className="gauging-settings">
        {words.settings.none} <Link href={hrefs.kit()}>{words.settings.toKit}</Link>
      </p>
    );
  const giveReason = (reason: string) => {
    kit.giveReason(reason);
    for (const entry of desk.log)
      if (entry.state === 'refused' && entry.fault?.fault === 'entry/certificate-not-in-force')
        sendAgain(entry, { override: reason });
    setTimeout(onReady);
  };
  return (
    <>
      {person === null ? <NameFirst onReady={onReady} /> : null}
      {kit.isOpen && kit.chosen !== null ? <Certificate key={kit.chosen} kit={kit} onReason={giveReason} /> : null}
    </>
  );
}

/** What stays the same from reading to reading: with what, and over what. */
export function ReadingSettings({ desk, at, onReady }: ReadingSettingsProps) {
  const { kit } = desk;
  if (kit.choices.length === 0) return null;
  return (
    <div className="gauging-settings gauging-settings-row">
      <ChoiceField
        label={words.settings.instrument}
        value={kit.chosen ?? ''}
        empty={words.settings.choose}
        fault={kit.chosen === null ? words.settings.first : null}
        choices={kit.choices.map(({ value, isOfBench }) => ({
          value,
          label: isOfBench ? words.settings.fromBench(value) : value,
        }))}
        onChange={(instrument) => {
          kit.choose(instrument);
          setTimeout(onReady);
        }}
      />
      <GaugedOver desk={desk} at={at} onReady={onReady} />
    </div>
  );
}

function NameFirst({ onReady }: { readonly onReady: () => void }) {
  const [name, setName] = useState('');
  return (
    <form
      className="form gauging-ask"
      onSubmit={(event) => {
        event.preventDefault();
        if (name.trim() === '') return;
        setPersonHere(name.trim());
        setTimeout(onReady);
      }}
    >
      <TextField label={words.settings.name} hint={words.settings.nameHint} value={name} onChange={setName} />
      <button type="submit" className="press press-main">
        {words.settings.nameKeep}
      </button>
    </form>
  );
}

function GaugedOver({ desk, at, onReady }: ReadingSettingsProps) {
  const over = at.held.body.gauged_over;
  const label = { '': words.settings.overNone, 'bare steel': words.settings.overBare, zinc: words.settings.overZinc };
  const set = (value: string) => {
    const gauged_over = value === '' ? null : value;
    void correctCells({ book: desk.code, label: words.settings.overLabel(at.piece) }, at.held, {
      kind: 'pieces',
      cells: { gauged_over },
      why: words.settings.overWhy(gauged_over ?? words.settings.overNone),
    });
    onReady();
  };
  return (
    <ChoiceField
      label={words.settings.over}
      value={over ?? ''}
      empty={label['']}
      choices={[
        { value: 'bare steel', label: label['bare steel'] },
        { value: 'zinc', label: label.zinc },
      ]}
      onChange={set}
    />
  );
}

function Certificate({ kit, onReason }: { readonly kit: LengthKit; readonly onReason: (reason: string) => void }) {
  const [why, setWhy] = useState('');
  const [isAsked, setAsked] = useState(kit.reason === null);
  if (!isAsked && kit.reason !== null)
    return (
      <p className="gauging-override">
        <span>{words.certificate.shown(kit.reason)}</span>
        <button type="button" className="press press-small" onClick={() => setAsked(true)}>
          {words.certificate.change}
        </button>
      </p>
    );
  return (
    <form
      className="form gauging-ask"
      onSubmit={(event) => {
        event.preventDefault();
        if (why.trim() === '') return;
        onReason(why.trim());
        setAsked(false);
      }}
    >
      <p className="gauging-override">{words.certificate.none(kit.chosen ?? '', kit.day, kit.lastDue)}</p>
      <TextField label={words.certificate.why} hint={words.certificate.cure} value={why} onChange={setWhy} />
      <button type="submit" className="press press-main">
        {words.certificate.keep}
      </button>
    </form>
  );
}
