import type { Limit } from '../chain/specification.ts';
import { InputError } from '../errors.ts';
import type { GaugingPosition, GaugingQuantity } from './reading.ts';

/** One place to read: everything that tells a row of the gauging from the others of its piece. */
export interface GaugingPlace {
  readonly link: number | null;
  readonly position: GaugingPosition;
  readonly quantity: GaugingQuantity;
  readonly direction: number;
  readonly repeat: number;
  /** For `lengthOverLinks`: over how many links. */
  readonly overLinks: number | null;
}

/** What {@link gaugingSchedule} works from. */
export interface ScheduleInputs {
  /** Free links of the piece. */
  readonly links: number;
  /** Links to gauge, spread evenly along the piece; all of them where it is left out. */
  readonly linksToGauge?: number | undefined;
  readonly quantities: readonly GaugingQuantity[];
  /** Diameters at the crown too, after those of the leg. */
  readonly withCrown?: boolean | undefined;
  /** So many of the gauged links are read a second time at the end, from the middle outwards: they tell the repeatability. */
  readonly linksReadAgain?: number | undefined;
  /** Lengths to read over so many links; over all free links where it is left out. */
  readonly lengthsOver?: readonly number[] | undefined;
}

const bothWays = [1, 2] as const;

/** The places of one link, in the order in which the hand goes round it: bar, weld, then the link as a whole. */
const linkOrder: readonly {
  readonly quantity: GaugingQuantity;
  readonly position: GaugingPosition;
  readonly directions: readonly number[];
  readonly isCrown?: boolean;
}[] = [
  { quantity: 'diameter', position: 'leg', directions: bothWays },
  { quantity: 'diameter', position: 'crown', directions: bothWays, isCrown: true },
  { quantity: 'weldDiameter', position: 'weld', directions: bothWays },
  { quantity: 'pitch', position: 'link', directions: [1] },
  { quantity: 'innerWidth', position: 'link', directions: [1] },
  { quantity: 'outerWidth', position: 'link', directions: [1] },
  { quantity: 'outerLength', position: 'link', directions: [1] },
];

const alwaysGauged: readonly GaugingQuantity[] = ['diameter', 'pitch'];

/**
 * The quantities a specification asks to gauge: those it limits, and always the bar (for the steel area) and the pitch (for
 * the gauge length). In the order of the link; a length over links comes last, and only where the piece has as many.
 */
export function quantitiesToGauge(limits: readonly Limit[], links: number): readonly GaugingQuantity[] {
  const limited = (quantity: GaugingQuantity) => limits.some((limit) => limit.quantity === quantity);
  const ofLink = [...new Set(linkOrder.map(({ quantity }) => quantity))].filter(
    (quantity) => alwaysGauged.includes(quantity) || limited(quantity),
  );
  const isLongEnough = limits.some(
    ({ quantity, links: over }) => quantity === 'lengthOverLinks' && (over ?? 1) <= links,
  );
  return isLongEnough ? [...ofLink, 'lengthOverLinks'] : ofLink;
}

/** Over how many links lengths are read on a piece: as the specification says where the piece is long enough, else over all. */
export function lengthsToGauge(limits: readonly Limit[], links: number): readonly number[] {
  const stated = limits.flatMap(({ quantity, links: over }) =>
    quantity === 'lengthOverLinks' && over !== null && over <= links ? [over] : [],
  );
  return stated.length > 0 ? [...new Set(stated)].sort((a, b) => a - b) : [links];
}

/**
 * The readings of a piece in the order in which they are taken: link by link, then the length over links, then the links read
 * again. Links count from the fixed end and are spread evenly, the ends included; one link alone is the middle one.
 *
 * @throws InputError `gauging/schedule` where counts are not whole numbers, or ask for more links than there are
 */
export function gaugingSchedule(inputs: ScheduleInputs): readonly GaugingPlace[] {
  const { links, quantities, withCrown = false, linksToGauge = links, linksReadAgain = 0 } = inputs;
  const lengthsOver = inputs.lengthsOver ?? [links];
  requireCounts({ links, linksToGauge, linksReadAgain, lengthsOver });
  const gauged = spread(links, linksToGauge);
  const ofLink = (link: number, repeat: number): GaugingPlace[] =>
    linkOrder
      .filter(({ quantity, isCrown }) => quantities.includes(quantity) && (withCrown || isCrown !== true))
      .flatMap(({ quantity, position, directions }) =>
        directions.map((direction) => ({ link, position, quantity, direction, repeat, overLinks: null })),
      );
  const lengths = quantities.includes('lengthOverLinks') ? lengthsOver : [];
  return [
    ...gauged.flatMap((link) => ofLink(link, 1)),
    // The key of a reading does not hold the number of links: several lengths of one piece are told apart by direction.
    ...lengths.map(
      (overLinks, index): GaugingPlace => ({
        link: null,
        position: 'piece',
        quantity: 'lengthOverLinks',
        direction: index + 1,
        repeat: 1,
        overLinks,
      }),
    ),
    ...fromTheMiddle(gauged)
      .slice(0, linksReadAgain)
      .sort((a, b) => a - b)
      .flatMap((link) => ofLink(link, 2)),
  ];
}

/** One text for one place: equal for equal places, whatever was read there. */
export function placeKey(place: Omit<GaugingPlace, 'overLinks'>): string {
  const { link, position, quantity, direction, repeat } = place;
  return [link ?? '', position, quantity, direction, repeat].join('/');
}

function spread(links: number, count: number): number[] {
  if (count === 1) return [Math.ceil(links / 2)];
  return Array.from({ length: count }, (_, index) => 1 + Math.round((index * (links - 1)) / (count - 1)));
}

function fromTheMiddle(links: readonly number[]): number[] {
  const middle = (links.length - 1) / 2;
  return links
    .map((link, index) => ({ link, away: Math.abs(index - middle) }))
    .sort((a, b) => a.away - b.away)
    .map(({ link }) => link);
}

function requireCounts(counts: {
  readonly links: number;
  readonly linksToGauge: number;
  readonly linksReadAgain: number;
  readonly lengthsOver: readonly number[];
}): void {
  const { links, linksToGauge, linksReadAgain, lengthsOver } = counts;
  const within = (value: number, least: number, greatest: number) =>
    Number.isInteger(value) && value >= least && value <= greatest;
  const faults = [
    within(links, 1, Number.MAX_SAFE_INTEGER) ? null : `free links: ${links}; a whole number from 1`,
    within(linksToGauge, 1, links) ? null : `links to gauge: ${linksToGauge}; 1 to ${links}`,
    within(linksReadAgain, 0, linksToGauge) ? null : `links read again: ${linksReadAgain}; 0 to ${linksToGauge}`,
    ...lengthsOver.map((over) => (within(over, 1, links) ? null : `length over ${over} links; 1 to ${links}`)),
  ].filter((fault) => fault !== null);
  if (faults.length === 0) return;
  throw new InputError('gauging/schedule', `The gauging cannot be laid out: ${faults.join('; ')}.`, { faults });
}
