import { useState } from 'react';
import { TextField } from '../../components/form-field.tsx';
import { text } from '../../lib/text.ts';
import { countsTyped, countTyped, type GaugingPlan, gaugedQuantities } from './gauging-plan.ts';

const words = text.gaugingDesk.plan;

interface PlanFormProps {
  readonly plan: GaugingPlan;
  readonly onPlan: (plan: GaugingPlan) => void;
  /** Places of all pieces by the plan in use. */
  readonly total: number;
}

/** Which quantities are gauged, on how many links, and how often. */
export function PlanForm({ plan, onPlan, total }: PlanFormProps) {
  const [quantities, setQuantities] = useState(plan.quantities);
  const [links, setLinks] = useState(plan.linksToGauge === null ? '' : String(plan.linksToGauge));
  const [again, setAgain] = useState(plan.linksReadAgain === 0 ? '' : String(plan.linksReadAgain));
  const [lengths, setLengths] = useState(plan.lengthsOver?.join(' ') ?? '');
  const [withCrown, setCrown] = useState(plan.withCrown);
  const [isKept, setKept] = useState(false);
  const [linksToGauge, readAgain, lengthsOver] = [countTyped(links), countTyped(again), countsTyped(lengths)];
  const keep = () => {
    if (linksToGauge === undefined || readAgain === undefined || lengthsOver === undefined) return;
    onPlan({ quantities, linksToGauge, withCrown, linksReadAgain: readAgain ?? 0, lengthsOver });
    setKept(true);
  };
  return (
    <form
      className="form"
      noValidate
      onChange={() => setKept(false)}
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
    >
      <QuantityChoice chosen={quantities} onChoose={setQuantities} />
      <label className="gauging-tick">
        <input type="checkbox" checked={withCrown} onChange={(event) => setCrown(event.currentTarget.checked)} />
        <span>{words.crown}</span>
      </label>
      <div className="form-fields">
        <TextField
          label={words.links}
          hint={words.linksHint}
          isNumber
          value={links}
          onChange={setLinks}
          fault={linksToGauge === undefined ? words.counts : null}
        />
        <TextField
          label={words.again}
          hint={words.againHint}
          isNumber
          value={again}
          onChange={setAgain}
          fault={readAgain === undefined ? words.counts : null}
        />
        <TextField
          label={words.lengths}
          hint={words.lengthsHint}
          value={lengths}
          onChange={setLengths}
          fault={lengthsOver === undefined ? words.countList : null}
        />
      </div>
      <p className="form-keys">
        <button type="submit" className="press press-main">
          {words.keep}
        </button>
        <span role="status" className="gauging-plan-kept">
          {isKept ? `${words.kept} ` : ''}
          {words.places(total)}
        </span>
      </p>
    </form>
  );
}

interface QuantityChoiceProps {
  readonly chosen: GaugingPlan['quantities'];
  readonly onChoose: (quantities: GaugingPlan['quantities']) => void;
}

function QuantityChoice({ chosen, onChoose }: QuantityChoiceProps) {
  const all = gaugedQuantities;
  return (
    <fieldset className="gauging-quantities">
      <legend>{words.quantities}</legend>
      <label className="gauging-tick">
        <input type="radio" name="quantities" checked={chosen === null} onChange={() => onChoose(null)} />
        <span>
          {words.ofLimits} <span className="soft small">{words.ofLimitsWords}</span>
        </span>
      </label>
      <label className="gauging-tick">
        <input
          type="radio"
          name="quantities"
          checked={chosen !== null}
          onChange={() => onChoose(all.filter((one) => one !== 'outerLength'))}
        />
        <span>{words.chosen}</span>
      </label>
      {chosen === null ? null : (
        <div className="gauging-chosen">
          {all.map((quantity) => (
            <label key={quantity} className="gauging-tick">
              <input
                type="checkbox"
                checked={chosen.includes(quantity)}
                onChange={() =>
                  onChoose(all.filter((one) => (one === quantity ? !chosen.includes(one) : chosen.includes(one))))
                }
              />
              <span>{text.gaugingDesk.place.quantity[quantity]}</span>
            </label>
          ))}
        </div>
      )}
    </fieldset>
  );
}
