import { normalCdf } from '@provinghouse/core';
import { text } from '../lib/text.ts';
import type { AskedColumn, OwnControl } from './row-form.tsx';
import { WordChoice } from './word-choice.tsx';

const { label, hint } = text.campaign;

/** What is asked of a campaign, part by part; the same whether it is opened or corrected. */
export const questionColumns: readonly AskedColumn[] = [
  { column: 'title', label: label.title },
  { column: 'client', label: label.client, hint: hint.client },
  { column: 'laboratory', label: label.laboratory },
  { column: 'question', label: label.question, hint: hint.question, rows: 3, isWide: true },
];

export const ruleColumns: readonly AskedColumn[] = [
  { column: 'decision_rule', label: label.decision_rule, control: RuleControl, isWide: true },
  { column: 'coverage_factor', label: label.coverage_factor, hint: hint.coverage_factor },
];

export const methodColumns: readonly AskedColumn[] = [
  { column: 'table_speed_min_mm_per_min', label: label.table_speed_min_mm_per_min, hint: hint.speed, unit: 'mm/min' },
  { column: 'table_speed_max_mm_per_min', label: label.table_speed_max_mm_per_min, hint: hint.speed, unit: 'mm/min' },
  { column: 'method', label: label.method, hint: hint.method, rows: 2, isWide: true },
  { column: 'sampling', label: label.sampling, hint: hint.sampling, rows: 2, isWide: true },
];

export const blindingColumn: AskedColumn = {
  column: 'blinding',
  label: label.blinding,
  control: BlindControl,
  isWide: true,
};

function RuleControl({ typed, ...given }: OwnControl) {
  const { guarded, simple } = text.campaign.rules;
  const risk = riskText(typed.coverage_factor ?? '');
  return (
    <WordChoice
      {...given}
      choices={[
        { value: 'guarded acceptance', label: guarded.label, words: guarded.words(risk) },
        { value: 'simple acceptance', label: simple.label, words: simple.words },
      ]}
    />
  );
}

/** Chance that a value found at the acceptance limit lies beyond the limit, with a guard band of k standard uncertainties (JCGM 106:2012, 8.3.2). */
function riskText(factor: string): string | null {
  const k = Number(factor.trim().replace(',', '.'));
  if (!(k > 0 && k <= 4)) return null;
  return `${(100 * normalCdf(-k)).toPrecision(2)}\u00a0%`;
}

function BlindControl(given: OwnControl) {
  const { open, blind } = text.campaign.blind;
  return (
    <WordChoice
      {...given}
      value={given.value === '' ? 'open' : given.value}
      choices={[
        { value: 'open', ...open },
        { value: 'blind', ...blind },
      ]}
    />
  );
}
