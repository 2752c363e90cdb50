import { type Caution, cautions } from '@provinghouse/contract';
import { text } from '../../lib/text.ts';
import { Check } from './check.tsx';

const words = text.rig.arming;

interface CautionListProps {
  readonly said: readonly Caution[];
  readonly onSaid: (said: readonly Caution[]) => void;
}

/** The cautions, each to be acknowledged by its name. */
export function CautionList({ said, onSaid }: CautionListProps) {
  return cautions.map((caution) => (
    <label key={caution} className="caution">
      <input
        type="checkbox"
        checked={said.includes(caution)}
        onChange={({ target }) => onSaid(target.checked ? [...said, caution] : said.filter((one) => one !== caution))}
      />
      <span>
        <strong>{text.rig.caution[caution].name}</strong>
        <span className="line soft">{text.rig.caution[caution].words}</span>
      </span>
      <Check holds={said.includes(caution)} words={said.includes(caution) ? words.hold : words.open} />
    </label>
  ));
}
