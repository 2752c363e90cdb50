import type { Row } from '@provinghouse/contract';
import { type KeyboardEvent, useEffect, useRef } from 'react';
import { Link, useLocation } from 'wouter';
import { ChainChoice } from '../../components/chain-choice.tsx';
import { FormField } from '../../components/form-field.tsx';
import type { LinkProportion } from '../../components/link-drawing-proportion.ts';
import { Section } from '../../components/page.tsx';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { useRemembered } from '../../lib/use-remembered.ts';
import { ReadingsByLink } from './readings-by-link.tsx';
import { readLinks } from './survey-place.ts';
import { SurveySetting } from './survey-setting.tsx';
import { ThicknessFacts } from './thickness-facts.tsx';
import { useGauge } from './use-gauge.ts';
import { type ThicknessEntry, useThickness } from './use-thickness.ts';
import type { ZincRows } from './zinc-rows.ts';

interface ThicknessProps {
  readonly code: string;
  readonly piece: Row<'pieces'>;
  readonly rows: ZincRows;
  readonly proportion: LinkProportion;
  readonly isPulled: boolean;
  readonly next: string | null;
}

const words = text.zinc.thickness;

/** The thickness survey of a piece: one field, Enter, the next place. */
export function Thickness({ code, piece, rows, proportion, isPulled, next }: ThicknessProps) {
  const gauge = useGauge(rows);
  const [perLink, setPerLink] = useRemembered('zinc readings on each link', '5');
  const [links, setLinks] = useRemembered(`zinc links ${code}`, '');
  const found = readLinks(links, piece.links);
  const count = /^[1-9]\d?$/.test(perLink.trim()) ? Number(perLink) : null;
  const plan = { links: 'links' in found ? found.links : [], readingsPerLink: count ?? 5 };
  const entry = useThickness({ code, piece, rows, plan, gauge });
  const field = useRef<HTMLInputElement>(null);
  const isAsking = entry.place !== null && !isPulled;
  useEffect(() => {
    if (isAsking) field.current?.focus({ preventScroll: true });
  }, [isAsking]);
  const at = entry.place?.link ?? null;
  return (
    <>
      <Section label={words.label}>
        {isPulled ? <p className="asked">{words.late}</p> : null}
        <SurveySetting
          gauge={gauge}
          perLink={perLink}
          perLinkFault={count === null ? words.perLinkFault : null}
          setPerLink={setPerLink}
          links={links}
          linksFault={'fault' in found ? text.entry.fault.typed(found.fault) : null}
          setLinks={setLinks}
        />
        <div className="survey">
          <QuickField
            entry={entry}
            field={field}
            planned={plan.links.length * plan.readingsPerLink}
            code={code}
            next={next}
          />
          <ChainChoice
            label={text.zinc.chain.label}
            alt={text.zinc.chain.alt(piece.links, at)}
            proportion={proportion}
            links={piece.links}
            at={at}
            onChange={(link) => {
              entry.toLink(link);
              field.current?.focus({ preventScroll: true });
            }}
          />
        </div>
      </Section>
      <Section label={words.sofar}>
        <div className="survey-sofar">
          <ReadingsByLink code={code} piece={piece} rows={rows} readings={entry.readings} />
          <ThicknessFacts readings={entry.readings} />
        </div>
      </Section>
    </>
  );
}

interface QuickFieldProps {
  readonly entry: ThicknessEntry;
  readonly field: React.RefObject<HTMLInputElement | null>;
  readonly planned: number;
  readonly code: string;
  readonly next: string | null;
}

function QuickField({ entry, field, planned, code, next }: QuickFieldProps) {
  const [, go] = useLocation();
  const { place, questions } = entry;
  const label = place === null ? words.done(planned) : words.at(place.link, place.reading);
  const enterKey = () => {
    if (place === null && entry.typed.trim() === '' && next !== null) go(hrefs.zincOf(code, next));
    else entry.submit();
  };
  // The unit a gauge may send begins with the letter that takes back.
  const undoKey = () => (entry.typed.trim() === '' ? void entry.undo() : entry.type(`${entry.typed}u`));
  const acts = new Map([
    ['enter', enterKey],
    ['r', entry.oneMore],
    ['u', undoKey],
    ['arrowup', () => entry.step(-1)],
    ['arrowdown', () => entry.step(1)],
    ['escape', () => entry.type('')],
  ]);
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const act = acts.get(event.key.toLowerCase());
    if (act === undefined) return;
    event.preventDefault();
    act();
  };
  const refocus = (act: () => void) => () => {
    act();
    field.current?.focus({ preventScroll: true });
  };
  return (
    <div className="quick">
      <FormField label={label} fault={entry.fault} hint={place === null ? words.doneMore : words.keys}>
        {({ id, describedBy, isWrong }) => (
          <span className="form-control">
            <input
              ref={field}
              id={id}
              className="number quick-field"
              type="text"
              inputMode="decimal"
              autoComplete="off"
              value={entry.typed}
              aria-describedby={describedBy}
              aria-invalid={isWrong || undefined}
              onChange={({ currentTarget }) => entry.type(currentTarget.value)}
              onKeyDown={onKeyDown}
            />
            <span className="unit">{words.unit}</span>
          </span>
        )}
      </FormField>
      {entry.isExtra ? <p className="soft">{words.extra}</p> : null}
      {questions.length === 0 ? null : (
        <div className="asked" role="alert">
          {questions.map(({ words: question, proposal_um }) => (
            <p key={question}>
              {question}{' '}
              {proposal_um === null ? null : (
                <button
                  type="button"
                  className="press press-small"
                  onClick={refocus(() => entry.type(`${proposal_um}`))}
                >
                  {words.take(`${proposal_um}`)}
                </button>
              )}
            </p>
          ))}
          <p className="soft">{words.asIs}</p>
        </div>
      )}
      <p className="quick-told" role="status">
        {entry.told}
      </p>
      <p className="form-keys">
        <button type="button" className="press" onClick={refocus(entry.oneMore)}>
          <kbd>{words.moreKey}</kbd> {words.more}
        </button>
        <button type="button" className="press" disabled={!entry.canUndo} onClick={refocus(() => void entry.undo())}>
          <kbd>{words.undoKey}</kbd> {words.undo}
        </button>
        {place === null && next !== null ? (
          <Link className="press press-main" href={hrefs.zincOf(code, next)}>
            {text.zinc.next(next)}
          </Link>
        ) : null}
      </p>
    </div>
  );
}
