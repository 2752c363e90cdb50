import { findSpecifications, type Quantity, quantityNames } from '@provinghouse/core';
import { useDeferredValue, useMemo, useRef, useState } from 'react';
import { ChoiceBlank, TextBlank } from '../../components/blank.tsx';
import { Page, Section } from '../../components/page.tsx';
import { useFindKey } from '../../components/use-find-key.ts';
import { useOwnStandards } from '../../lib/own-standards.ts';
import { text } from '../../lib/text.ts';
import { useAddressState } from '../../lib/use-address-state.ts';
import { FoundTable } from './found-table.tsx';
import { everySpecification, lookUp } from './look-up.ts';
import { OwnFiles } from './own-files.tsx';
import { emptySearch, type RulebookSearch, searchAddress } from './search-address.ts';

const words = text.rulebook;

/** Rows added at a time: a table of hundreds is slow to lay out. */
const pageLength = 40;

/** Every specification there is, narrowed by what is known of it. */
export function SearchPage() {
  const own = useOwnStandards();
  const [search, setSearch] = useAddressState(searchAddress);
  const wanted = useDeferredValue(search);
  const list = useMemo(() => everySpecification(own), [own]);
  const found = useMemo(() => findSpecifications(list, wanted, own), [list, wanted, own]);
  const [length, setLength] = useState(pageLength);
  const change = (part: Partial<RulebookSearch>) => {
    setLength(pageLength);
    setSearch({ ...search, ...part });
  };
  const picked = useMemo(() => titleOf(search.compareWith, own), [search.compareWith, own]);
  const isBlank = searchAddress.write({ ...search, compareWith: null }) === '';
  return (
    <Page title={words.title} lead={words.lead}>
      <Section label={words.search} note={words.searchHow}>
        <SearchFields search={search} onChange={change} />
        {isBlank ? null : (
          <p className="rulebook-presses">
            <button
              type="button"
              className="press"
              onClick={() => change({ ...emptySearch, compareWith: search.compareWith })}
            >
              {words.clear}
            </button>
          </p>
        )}
      </Section>
      <Section label={words.found}>
        {picked === null ? null : (
          <p className="rulebook-picking">
            {words.picking(picked)}{' '}
            <button type="button" className="press" onClick={() => change({ compareWith: null })}>
              {words.pickNone}
            </button>
          </p>
        )}
        <p className="soft" role="status">
          {words.count(found.length, Math.max(found.length, list.length))}
        </p>
        {found.length === 0 ? (
          <p>
            {words.empty} {wanted.size.trim() === '' ? words.emptyCure : `${words.emptySize} ${words.emptyCure}`}
          </p>
        ) : (
          <FoundTable found={found.slice(0, length)} quantity={wanted.quantity} compareWith={search.compareWith} />
        )}
        {found.length <= length ? null : (
          <p className="rulebook-presses">
            <button type="button" className="press" onClick={() => setLength(length + 4 * pageLength)}>
              {words.more(Math.min(4 * pageLength, found.length - length))}
            </button>
          </p>
        )}
      </Section>
      <Section label={words.ownFiles} note={words.ownFilesHow}>
        <OwnFiles />
      </Section>
    </Page>
  );
}

function titleOf(key: string | null, own: Parameters<typeof lookUp>[1]): string | null {
  return key === null ? null : (lookUp(key, own).specification?.title ?? null);
}

interface SearchFieldsProps {
  readonly search: RulebookSearch;
  readonly onChange: (part: Partial<RulebookSearch>) => void;
}

function SearchFields({ search, onChange }: SearchFieldsProps) {
  const box = useRef<HTMLInputElement>(null);
  useFindKey(box);
  return (
    <div className="blanks rulebook-search">
      <TextBlank
        label={words.words}
        type="search"
        box={box}
        value={search.words}
        placeholder={words.wordsHint}
        onText={(next) => onChange({ words: next })}
      />
      <TextBlank
        label={words.grade}
        value={search.grade}
        placeholder={words.gradeHint}
        onText={(grade) => onChange({ grade })}
      />
      <TextBlank
        label={words.size}
        value={search.size}
        placeholder={words.sizeHint}
        onText={(size) => onChange({ size })}
      />
      <ChoiceBlank
        label={words.quantity}
        value={search.quantity ?? ''}
        options={[['', words.anyQuantity], ...Object.entries(quantityNames)]}
        // The options are the names of the quantities, or blank.
        onChoose={(quantity) => onChange({ quantity: quantity === '' ? null : (quantity as Quantity) })}
      />
    </div>
  );
}
