import { useComputedColorScheme, useMantineColorScheme } from '@mantine/core';
import { Link, useLocation } from 'wouter';
import { hrefs } from '../lib/route.ts';
import { text } from '../lib/text.ts';

/** The plate at the top of every screen: the name, the places of the campaign at hand, the ground. */
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
        {code === null ? null : <Places code={code} />}
        <Ground />
      </div>
      <RuleEdge />
    </header>
  );
}

function Places({ code }: { readonly code: string }) {
  const [location] = useLocation();
  const places = [
    [hrefs.brief(code), text.places.brief],
    [hrefs.board(code), text.places.board],
    [hrefs.findings(code), text.places.findings],
    [hrefs.ledger(code), text.places.ledger],
  ] as const;
  return (
    <nav className="plate-places" aria-label={text.places.label}>
      <Link href={hrefs.campaigns()}>{text.places.all}</Link>
      {places.map(([href, name]) => (
        <Link key={href} href={href} aria-current={location === href ? 'page' : undefined}>
          {name}
        </Link>
      ))}
      <a href={hrefs.report(code)}>{text.places.report}</a>
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
