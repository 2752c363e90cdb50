import { hrefs } from './route.ts';
import { text } from './text.ts';

/** A place on the screen: its name, where it is, and the letter that leads there after G. */
export interface Place {
  readonly href: string;
  readonly name: string;
  readonly letter: string;
  /** Found by name and by key, without a place of its own in the masthead. */
  readonly isApart?: boolean;
}

/** Places that stand outside any campaign. */
export function benchPlaces(): readonly Place[] {
  return [
    { href: hrefs.campaigns(), name: text.places.all, letter: 'c' },
    { href: hrefs.rigs(), name: text.places.rig, letter: 'i' },
    { href: hrefs.kit(), name: text.places.kit, letter: 't' },
    { href: hrefs.rulebook(), name: text.places.rulebook, letter: 'u' },
    { href: hrefs.reckoner(), name: text.places.reckoner, letter: 'n' },
    { href: hrefs.people(), name: text.places.people, letter: 'o' },
    { href: hrefs.benchLedger(), name: text.places.benchLedger, letter: 'd', isApart: true },
  ];
}

/** Places of one campaign, in the order of the work. */
export function campaignPlaces(code: string): readonly Place[] {
  return [
    { href: hrefs.board(code), name: text.places.board, letter: 'b' },
    { href: hrefs.brief(code), name: text.places.brief, letter: 'r' },
    { href: hrefs.samples(code), name: text.places.samples, letter: 's' },
    { href: hrefs.gauging(code), name: text.places.gauging, letter: 'g' },
    { href: hrefs.pulls(code), name: text.places.pulls, letter: 'p' },
    { href: hrefs.breaks(code), name: text.places.breaks, letter: 'k' },
    { href: hrefs.zinc(code), name: text.places.zinc, letter: 'z' },
    { href: hrefs.findings(code), name: text.places.findings, letter: 'f' },
    { href: hrefs.issue(code), name: text.places.issue, letter: 'x' },
    { href: hrefs.ledger(code), name: text.places.ledger, letter: 'l' },
  ];
}
