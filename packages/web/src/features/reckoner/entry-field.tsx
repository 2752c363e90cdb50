import { ChoiceBlank, TextBlank } from '../../components/blank.tsx';
import { text } from '../../lib/text.ts';
import { linkedText, printed, unitText } from './result-text.ts';
import { calculationOf } from './sheet.ts';
import type { Field, SheetReckoning } from './sheet-reckoning.ts';

interface EntryFieldProps {
  readonly field: Field;
  readonly all: SheetReckoning;
  /** Says that any unit may be used, where several fields share one. */
  readonly saysUnit: boolean;
  readonly onEntry: (entry: string) => void;
}

const words = text.reckoner;

/** One field of a calculation: what it means, its number with its unit, where a linked number comes from, what is wrong with it. */
export function EntryField({ field, all, saysUnit, onEntry }: EntryFieldProps) {
  const { input, shown, link, fault } = field;
  const frame = {
    name: input.key,
    value: link === null ? shown : linkedText(shown),
    fault,
    unit: unitText(input.unit),
    isLinked: link !== null,
    label: printed(input.required ? input.meaning : words.mayBeLeftOut(input.meaning)),
    hint: hintOf(field, all, saysUnit),
  };
  if (input.choices === undefined) return <TextBlank {...frame} isNumber onText={onEntry} />;
  const choices = [...new Set([...input.choices.map(String), ...(shown === '' ? [] : [shown])])];
  return (
    <ChoiceBlank
      {...frame}
      options={[['', words.choose], ...choices.map((choice) => [choice, choice] as const)]}
      onChoose={onEntry}
    />
  );
}

function hintOf({ link }: Field, all: SheetReckoning, saysUnit: boolean) {
  const unit = saysUnit ? words.unitAsGiven : null;
  if (link === null) return unit;
  return (
    <>
      <LinkShape /> {linkWords(link, all)} {unit === null ? null : `(${unit})`}
    </>
  );
}

function linkWords(link: NonNullable<Field['link']>, all: SheetReckoning): string {
  if (link.step === 0) {
    const given: Readonly<Record<string, string>> = words.given;
    return `${words.fromChain(given[link.key] ?? link.key)}. ${words.typeInstead}`;
  }
  const from = calculationOf(all.steps[link.step - 1]?.name ?? '');
  const fields = link.side === 'result' ? from?.outputs : from?.inputs;
  const what = fields?.find(({ key }) => key === link.key)?.meaning ?? link.key;
  return `${words.fromStep(link.step, what)}. ${words.typeInstead}`;
}

/** Two rings of a chain: the number hangs on another. */
function LinkShape() {
  return (
    <svg viewBox="0 0 16 8" aria-hidden="true" className="link-shape">
      <rect x="0.7" y="0.7" width="9" height="6.6" rx="3.3" />
      <rect x="6.3" y="0.7" width="9" height="6.6" rx="3.3" />
    </svg>
  );
}
