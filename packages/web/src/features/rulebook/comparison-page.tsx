import { compareSpecifications, type Specification } from '@provinghouse/core';
import { Link } from 'wouter';
import { Page, Section } from '../../components/page.tsx';
import { SpecificationChoice } from '../../components/specification-choice.tsx';
import { useOwnStandards } from '../../lib/own-standards.ts';
import { hrefs } from '../../lib/route.ts';
import { keyText, readKey } from '../../lib/specification-key.ts';
import { text } from '../../lib/text.ts';
import { useAddressState } from '../../lib/use-address-state.ts';
import { type ComparisonState, comparisonAddress } from './comparison-address.ts';
import { ComparisonTable } from './comparison-table.tsx';
import { type LookedUp, lookUp } from './look-up.ts';

const words = text.rulebook;

/** Two specifications side by side. */
export function ComparisonPage() {
  const own = useOwnStandards();
  const [state, setState] = useAddressState(comparisonAddress);
  const first = state.first === null ? null : lookUp(state.first, own);
  const second = state.second === null ? null : lookUp(state.second, own);
  return (
    <Page title={words.compare} lead={words.compareLead}>
      <Section label={words.choices}>
        <Side name={words.first} found={first} onChoose={(key) => setState({ ...state, first: key }, 'push')} />
        <Side name={words.second} found={second} onChoose={(key) => setState({ ...state, second: key }, 'push')} />
        <p className="rulebook-presses">
          <button
            type="button"
            className="press"
            onClick={() => setState({ ...state, first: state.second, second: state.first }, 'push')}
          >
            {words.swap}
          </button>
        </p>
      </Section>
      <Section label={words.comparison} note={words.comparisonHow}>
        {first?.specification && second?.specification ? (
          <Compared first={first.specification} second={second.specification} state={state} onState={setState} />
        ) : (
          <p>{words.compareEmpty}</p>
        )}
      </Section>
    </Page>
  );
}

interface SideProps {
  readonly name: string;
  readonly found: LookedUp | null;
  readonly onChoose: (key: string | null) => void;
}

function Side({ name, found, onChoose }: SideProps) {
  return (
    <fieldset className="rulebook-side">
      <legend>
        {name}
        {found?.specification ? (
          <>
            {': '}
            <Link href={hrefs.specification(keyText(found.key))}>{found.specification.title}</Link>
          </>
        ) : null}
      </legend>
      <div className="blanks">
        <SpecificationChoice
          chosen={found === null ? null : (found.key ?? readKey(null))}
          onChoose={(key) => onChoose(key === null ? null : keyText(key))}
        />
      </div>
      {found === null || found.fault === null ? null : <p className="form-fault">{found.fault}</p>}
    </fieldset>
  );
}

interface ComparedProps {
  readonly first: Specification;
  readonly second: Specification;
  readonly state: ComparisonState;
  readonly onState: (state: ComparisonState) => void;
}

function Compared({ first, second, state, onState }: ComparedProps) {
  const rows = compareSpecifications(first, second);
  const shown = state.onlyDifferences ? rows.filter(({ relation }) => relation !== 'same') : rows;
  const hasSizes = first.nominalSize_mm !== second.nominalSize_mm;
  return (
    <>
      <p className="rulebook-only">
        <label>
          <input
            type="checkbox"
            checked={state.onlyDifferences}
            onChange={({ target }) => onState({ ...state, onlyDifferences: target.checked })}
          />{' '}
          {words.onlyDifferences}
        </label>
        <span className="soft" role="status">
          {words.shownRows(shown.length, rows.length)}
        </span>
      </p>
      {hasSizes ? <p className="soft rulebook-how">{words.bySizeHow}</p> : null}
      {shown.length === 0 ? (
        <p>{words.allSame}</p>
      ) : (
        <ComparisonTable first={first} second={second} rows={shown} hasSizes={hasSizes} />
      )}
    </>
  );
}
