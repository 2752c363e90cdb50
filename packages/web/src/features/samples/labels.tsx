import { useState } from 'react';
import { ChoiceField, TextField } from '../../components/form-field.tsx';
import { text } from '../../lib/text.ts';
import type { Bench, SampleSeen } from './use-bench.ts';

const words = text.samples.labels;

type Sheet = keyof typeof words.sheets;

interface LabelsProps {
  readonly bench: Bench;
  readonly chosen: SampleSeen | null;
}

/** Labels of the pieces as PDF, each with a code that a phone reads. */
export function Labels({ bench, chosen }: LabelsProps) {
  const [sheet, setSheet] = useState<Sheet>('a4-3x8');
  const [which, setWhich] = useState('');
  const [used, setUsed] = useState('0');
  const [hasMarks, setMarks] = useState(true);
  const { campaign, pieces } = bench;
  if (pieces.length === 0) return <p className="soft">{words.none}</p>;
  const own = chosen?.pieces ?? [];
  const isOwn = which === 'own' && own.length > 0;
  const usedCount = /^\d+$/.test(used.trim()) && Number(used) <= 23 ? Number(used) : null;
  const isSheet = sheet === 'a4-3x8';
  const query = new URLSearchParams({
    pieces: isOwn ? own.map(({ id }) => id).join(',') : '',
    sheet,
    used: isSheet ? String(usedCount ?? 0) : '0',
    marks: String(isSheet && hasMarks),
  });
  const address = `/api/campaigns/${encodeURIComponent(campaign.campaign)}/labels.pdf?${query}`;
  const isLocal = ['localhost', '127.0.0.1', '[::1]'].includes(window.location.hostname);
  const isBare = campaign.blinding === 'blind' && campaign.unblinded_at === null;
  return (
    <div className="sample-labels">
      <div className="form-fields">
        <ChoiceField
          label={words.which}
          value={isOwn ? 'own' : ''}
          choices={[
            { value: '', label: words.all(pieces.length) },
            ...(chosen === null || own.length === 0
              ? []
              : [{ value: 'own', label: words.own(chosen.held.id, own.length) }]),
          ]}
          onChange={setWhich}
        />
        <ChoiceField
          label={words.sheet}
          value={sheet}
          choices={Object.entries(words.sheets).map(([value, label]) => ({ value, label }))}
          onChange={(value) => setSheet(value === 'single-62x29' ? value : 'a4-3x8')}
        />
        {isSheet ? (
          <TextField
            label={words.used}
            isNumber
            value={used}
            fault={usedCount === null ? words.usedFault : null}
            onChange={setUsed}
          />
        ) : null}
      </div>
      {isSheet ? (
        <label className="sample-tick">
          <input type="checkbox" checked={hasMarks} onChange={(event) => setMarks(event.currentTarget.checked)} />
          <span>{words.marks}</span>
        </label>
      ) : null}
      {isBare ? <p className="soft">{words.bare}</p> : null}
      {isLocal ? <p className="soft">{words.local}</p> : null}
      <p className="form-keys">
        <a className="press press-main" href={address} target="_blank" rel="noreferrer">
          {words.print}
        </a>
      </p>
    </div>
  );
}
