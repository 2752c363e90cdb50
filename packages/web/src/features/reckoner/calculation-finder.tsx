import { calculations } from '@provinghouse/core';
import { type MouseEvent, memo, useDeferredValue, useMemo, useRef, useState } from 'react';
import { TextBlank } from '../../components/blank.tsx';
import { useFindKey } from '../../components/use-find-key.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { findCalculations } from './calculation-search.ts';
import type { SheetActions } from './use-sheet.ts';

interface CalculationFinderProps {
  readonly hasSteps: boolean;
  readonly isFull: boolean;
  readonly actions: SheetActions;
}

const words = text.reckoner;

/** The list of calculations by subject, narrowed by what is typed. */
export const CalculationFinder = memo(function CalculationFinder({
  hasSteps,
  isFull,
  actions,
}: CalculationFinderProps) {
  const [query, setQuery] = useState('');
  const [isWhole, setWhole] = useState(false);
  const wanted = useDeferredValue(query);
  const groups = useMemo(() => findCalculations(wanted), [wanted]);
  const found = groups.reduce((sum, group) => sum + group.calculations.length, 0);
  const isListed = !hasSteps || isWhole || wanted.trim() !== '';
  const open = (name: string) => {
    setQuery('');
    setWhole(false);
    actions.open(name);
  };
  const add = (name: string) => {
    setQuery('');
    setWhole(false);
    actions.add(name);
  };
  return (
    <>
      {hasSteps ? null : (
        <p className="reckoner-empty">
          {words.empty}{' '}
          <button type="button" className="press" onClick={() => actions.openExample('grade-breaking-force')}>
            {words.tryExample}
          </button>
        </p>
      )}
      <div className="finder-row">
        <SearchField
          query={query}
          onQuery={setQuery}
          onFirst={() => {
            const first = findCalculations(query)[0]?.calculations[0];
            if (first !== undefined && query.trim() !== '') open(first.name);
          }}
        />
        <p className="soft" role="status">
          {wanted.trim() === ''
            ? words.count(calculations.length, calculations.length)
            : words.count(found, calculations.length)}
        </p>
        {hasSteps ? (
          <button type="button" className="press" aria-expanded={isWhole} onClick={() => setWhole(!isWhole)}>
            {isWhole ? words.hideAll : words.showAll(calculations.length)}
          </button>
        ) : null}
      </div>
      {isFull && isListed ? <p className="soft">{words.full}</p> : null}
      {isListed && found === 0 ? <p className="soft">{words.noneFound(wanted.trim())}</p> : null}
      {isListed ? (
        <div className="finder-groups">
          {groups.map((group) => (
            <section key={group.subject} aria-label={group.subject}>
              <h3>{group.subject}</h3>
              <ul>
                {group.calculations.map(({ name, title }) => (
                  <li key={name}>
                    <OpenLink name={name} title={title} onOpen={open} />
                    {hasSteps && !isFull ? (
                      <button
                        type="button"
                        className="finder-below"
                        aria-label={words.belowLabel(title)}
                        onClick={() => add(name)}
                      >
                        {words.below}
                      </button>
                    ) : null}
                  </li>
                ))}
              </ul>
            </section>
          ))}
        </div>
      ) : null}
    </>
  );
});

interface SearchFieldProps {
  readonly query: string;
  readonly onQuery: (query: string) => void;
  readonly onFirst: () => void;
}

function SearchField({ query, onQuery, onFirst }: SearchFieldProps) {
  const box = useRef<HTMLInputElement>(null);
  useFindKey(box);
  return (
    <div className="finder-search">
      <TextBlank
        label={words.search}
        type="search"
        value={query}
        placeholder={words.searchHint}
        box={box}
        onText={onQuery}
        onEnter={onFirst}
      />
    </div>
  );
}

interface OpenLinkProps {
  readonly name: string;
  readonly title: string;
  readonly onOpen: (name: string) => void;
}

/** A plain press opens it with what is known already; in a window of its own it opens blank. */
function OpenLink({ name, title, onOpen }: OpenLinkProps) {
  const onClick = (event: MouseEvent) => {
    if (event.button !== 0 || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
    event.preventDefault();
    onOpen(name);
  };
  return (
    <a href={hrefs.reckoner(`1=${name}`)} onClick={onClick}>
      {title}
    </a>
  );
}
