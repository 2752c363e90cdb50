import './go-to.css';
import { useEffect, useMemo, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import { useRows } from '../lib/entry/use-rows.ts';
import { benchPlaces, campaignPlaces, type Place } from '../lib/places.ts';
import { useCampaigns } from '../lib/requests/campaigns.ts';
import { hrefs } from '../lib/route.ts';
import { text } from '../lib/text.ts';
import { SheetOver } from './sheet-over.tsx';

interface Goal {
  readonly href: string;
  readonly name: string;
  /** What it is, beside its name. */
  readonly what: string;
  readonly keys?: string;
}

/** So many goals are shown at once; more typing brings the others up. */
const shownGoals = 12;

/** Leads to any place, piece or campaign by a few letters of its name. */
export function GoTo({ code, onClose }: { readonly code: string | null; readonly onClose: () => void }) {
  return (
    <SheetOver title={text.goTo.title} onClose={onClose}>
      {code === null ? (
        <Choice goals={usualGoals(null)} onClose={onClose} />
      ) : (
        <WithPieces code={code} onClose={onClose} />
      )}
    </SheetOver>
  );
}

function WithPieces({ code, onClose }: { readonly code: string; readonly onClose: () => void }) {
  const pieces = useRows(code, 'pieces');
  const held = pieces.state === 'read' ? pieces.rows : [];
  const goals = useMemo(
    () => [
      ...usualGoals(code),
      ...held.map(({ id }) => ({ href: hrefs.piece(code, id), name: id, what: text.goTo.piece })),
    ],
    [code, held],
  );
  return <Choice goals={goals} onClose={onClose} />;
}

function usualGoals(code: string | null): Goal[] {
  const goal = ({ href, name, letter }: Place, what: string): Goal => ({
    href,
    name,
    what,
    keys: `G ${letter.toUpperCase()}`,
  });
  return [
    ...(code === null ? [] : campaignPlaces(code).map((place) => goal(place, code))),
    ...benchPlaces().map((place) => goal(place, text.goTo.bench)),
    { href: hrefs.newCampaign(), name: text.campaign.new, what: text.goTo.bench },
    { href: hrefs.start(), name: text.start.title, what: text.goTo.bench },
  ];
}

/** The goals that hold every word typed, those whose name begins with the first word before the others. */
export function goalsFor<G extends Pick<Goal, 'name' | 'what'>>(goals: readonly G[], typed: string): G[] {
  const words = typed
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  const [first] = words;
  const begins = ({ name }: G) => first !== undefined && name.toLowerCase().startsWith(first);
  const found = goals.filter(({ name, what }) => words.every((word) => `${name} ${what}`.toLowerCase().includes(word)));
  return [...found.filter(begins), ...found.filter((goal) => !begins(goal))];
}

function Choice({ goals, onClose }: { readonly goals: readonly Goal[]; readonly onClose: () => void }) {
  const campaigns = useCampaigns();
  const [typed, setTyped] = useState('');
  const [at, setAt] = useState(0);
  const [, go] = useLocation();
  const list = useRef<HTMLDivElement>(null);
  const all = useMemo(() => {
    const known = campaigns.state === 'read' ? campaigns.record.campaigns : [];
    const others = known.map(
      ({ campaign, title }): Goal => ({
        href: hrefs.board(campaign),
        name: campaign,
        what: `${text.goTo.campaign}: ${title}`,
      }),
    );
    return [...goals, ...others];
  }, [goals, campaigns]);
  const found = goalsFor(all, typed).slice(0, shownGoals);
  useEffect(() => {
    list.current?.children[at]?.scrollIntoView({ block: 'nearest' });
  }, [at]);
  const choose = (goal: Goal | undefined) => {
    if (!goal) return;
    go(goal.href);
    onClose();
  };
  const onKey = (key: string): boolean => {
    if (key === 'ArrowDown') setAt(Math.min(at + 1, found.length - 1));
    else if (key === 'ArrowUp') setAt(Math.max(at - 1, 0));
    else if (key === 'Enter') choose(found[at]);
    else return false;
    return true;
  };
  return (
    <div className="go-to">
      <input
        type="text"
        role="combobox"
        aria-expanded="true"
        aria-controls="go-to-goals"
        aria-activedescendant={found[at] ? `go-to-${at}` : undefined}
        aria-label={text.goTo.field}
        autoComplete="off"
        value={typed}
        onChange={(event) => {
          setTyped(event.currentTarget.value);
          setAt(0);
        }}
        onKeyDown={(event) => {
          if (onKey(event.key)) event.preventDefault();
        }}
      />
      <div id="go-to-goals" role="listbox" aria-label={text.goTo.title} ref={list}>
        {found.map((goal, place) => (
          // biome-ignore lint/a11y/useFocusableInteractive: as above
          // biome-ignore lint/a11y/useKeyWithClickEvents: the keys are those of the field
          <div
            key={`${goal.href} ${goal.name}`}
            id={`go-to-${place}`}
            role="option"
            aria-selected={place === at}
            onClick={() => choose(goal)}
          >
            <span>{goal.name}</span> <span className="soft">{goal.what}</span>
            {goal.keys === undefined ? null : <kbd>{goal.keys}</kbd>}
          </div>
        ))}
      </div>
      <p className="soft small" role="status">
        {found.length === 0 ? text.goTo.none : text.goTo.how}
      </p>
    </div>
  );
}
