import { useComputedColorScheme, useMantineColorScheme } from '@mantine/core';
import { Link, useLocation } from 'wouter';
import { benchPlaces, campaignPlaces, type Place } from '../lib/places.ts';
import { hrefs } from '../lib/route.ts';
import { text } from '../lib/text.ts';
import { KeptMark } from './kept.tsx';
import { KeyWays } from './key-ways.tsx';
import { WhoHere } from './who-here.tsx';

/** The plate at the top of every screen: the name, the bench, who is at it, and below the places of the campaign at hand. */
export function Masthead({ code }: { readonly code: string | null }) {
  return (
    <header className="plate">
      <a className="skip" href="#matter">
        {text.skip}
      </a>
      <div className="sheet plate-row">
        <Link className="plate-name" href={hrefs.campaigns()}>
          {text.name}
        </Link>
        <Places label={text.places.bench} places={benchPlaces().filter(({ isApart }) => isApart !== true)} />
        <div className="plate-end">
          <KeptMark />
          <KeyWays code={code} />
          <WhoHere />
          <Ground />
        </div>
      </div>
      {code === null ? null : (
        <div className="sheet plate-row plate-campaign">
          <Link className="plate-code" href={hrefs.board(code)}>
            {code}
          </Link>
          <Places label={text.places.label} places={campaignPlaces(code)} />
        </div>
      )}
      <RuleEdge />
    </header>
  );
}

interface PlacesProps {
  readonly label: string;
  readonly places: readonly Place[];
}

function Places({ label, places }: PlacesProps) {
  const [location] = useLocation();
  // The board and the list of campaigns stand above other addresses, and are meant only where they stand themselves.
  const isHere = (href: string) => location === href || (href.split('/').length > 3 && location.startsWith(`${href}/`));
  const isBelow = (href: string) => href.split('/').length === 2 && href !== '/' && location.startsWith(`${href}/`);
  return (
    <nav className="plate-places" aria-label={label}>
      {places.map(({ href, name }) => (
        <Link key={href} href={href} aria-current={isHere(href) || isBelow(href) ? 'page' : undefined}>
          {name}
        </Link>
      ))}
    </nav>
  );
}

function Ground() {
  const { setColorScheme } = useMantineColorScheme();
  const ground = useComputedColorScheme('light', { getInitialValueInEffect: false });
  const isDark = ground === 'dark';
  return (
    <button type="button" className="ground" onClick={() => setColorScheme(isDark ? 'light' : 'dark')}>
      {isDark ? text.ground.toLight : text.ground.toDark}
    </button>
  );
}

/** The divisions of a steel rule: short, half, long. */
function RuleEdge() {
  const ticks = Array.from({ length: 10 }, (_, at) => `M${at * 8 + 0.5} 0v${at === 0 ? 10 : at === 5 ? 7 : 4}`).join(
    '',
  );
  return (
    <svg className="rule-edge" aria-hidden="true">
      <defs>
        <pattern id="rule-divisions" width="80" height="11" patternUnits="userSpaceOnUse">
          <path d={ticks} stroke="currentColor" strokeWidth="1" />
        </pattern>
      </defs>
      <rect width="100%" height="11" fill="url(#rule-divisions)" />
    </svg>
  );
}
