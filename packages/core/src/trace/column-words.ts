import type { HeaderCell } from './header-cell.ts';

/** What a header may stand for. Plain travel (`displacement`) is the piece's or the machine's, as its neighbours decide. */
export type ColumnKind = 'time' | 'force' | 'table' | 'gauge' | 'extension' | 'travel';

interface KindWords {
  readonly kind: ColumnKind;
  readonly words: RegExp;
}

/** Quantities that share a word with a signal but are none: rates, stresses, set points, running extremes. */
const EXCLUDED =
  /\b(rate|speed|velocity|stress|strain|set ?point|setpoint|target|demand|command|peak|max|maximum|min|minimum|soll|sollwert|vitesse|contrainte)\b|geschwindigkeit|spannung/;

/** In order: the first that fits wins, so a gauge's word comes before the machine's, and the machine's before plain travel. */
const KINDS: readonly KindWords[] = [
  { kind: 'time', words: /\b(time|timestamp|elapsed|clock|t|temps|duree)\b|zeit\b/ },
  { kind: 'gauge', words: /\b(extensometer|extensometre|clip ?gauge|gauge|gage)\b|feindehnung|dehnungsaufnehmer/ },
  {
    kind: 'table',
    words:
      /\b(table|crosshead|cross head|machine|stroke|ram|actuator|piston|traverse|grip|course)\b|travers|maschinenweg|kolben/,
  },
  { kind: 'force', words: /\b(force|load|pull|tension|loadcell|f|effort|charge)\b|kraft|\blast\b/ },
  {
    kind: 'extension',
    words: /\b(extension|elongation|stretch|allongement|delta l|dl)\b|dehnung|verlaengerung|verlangerung/,
  },
  { kind: 'travel', words: /\b(displacement|travel|position|distance|deplacement)\b|weg\b/ },
];

/** Header in lower case, without accents, with blanks between its words. */
export function plainWords(name: string): string {
  return name
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .replace(/Δ/g, 'delta ')
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .toLowerCase()
    .replace(/ß/g, 'ss')
    .replace(/[^a-z]+/g, ' ')
    .trim();
}

const DIMENSION_OF: Readonly<Record<ColumnKind, 'time' | 'force' | 'length'>> = {
  time: 'time',
  force: 'force',
  table: 'length',
  gauge: 'length',
  extension: 'length',
  travel: 'length',
};

/** Whether the unit may belong to the kind: right dimension, ambiguous within it, or not given at all. */
function unitFits(cell: HeaderCell, kind: ColumnKind): boolean {
  const finding = cell.finding;
  if (finding === null) return true;
  if (finding.kind === 'known') return finding.unit.dimension === DIMENSION_OF[kind];
  return finding.kind === 'ambiguous' && kind === 'force';
}

/** The kind of a column by the words of its header, or null when none is recognised or its unit belongs to another quantity. */
export function kindByWords(cell: HeaderCell): ColumnKind | null {
  const words = plainWords(cell.name);
  if (words === '' || EXCLUDED.test(words)) return null;
  const load = /\bload cell\b/.test(words) ? 'force' : null;
  const kind = load ?? KINDS.find((entry) => entry.words.test(words) && unitFits(cell, entry.kind))?.kind ?? null;
  return kind !== null && unitFits(cell, kind) ? kind : null;
}

/** The dimension of a column's unit when that is beyond doubt. */
export function dimensionByUnit(cell: HeaderCell): 'time' | 'force' | 'length' | null {
  if (EXCLUDED.test(plainWords(cell.name))) return null;
  return cell.finding?.kind === 'known' ? cell.finding.unit.dimension : null;
}
