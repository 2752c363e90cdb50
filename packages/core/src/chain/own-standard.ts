import { InputError } from '../errors.ts';
import { toBenchUnit } from './bench-unit.ts';
import { readExpression } from './rule-expression.ts';
import { rulebook } from './rulebook.ts';
import { type OwnStandard, standardId } from './standard-selection.ts';
import { benchUnitOf } from './table-finding.ts';

/** Quantities whose unit the tool converts or relies on; the others of the vocabulary are words for the reader. */
const bareQuantities: ReadonlySet<string> = new Set([
  'tradeSize',
  'sizeRatio',
  'temperatureRange',
  'material',
  'stressAtWll',
]);

type Faults = string[];
type Fields = Readonly<Record<string, unknown>>;

/**
 * An own specification from a data file of the same form as one entry of the published rulebook, with the sources it
 * names beside it (`sources: { "works-spec": { "kind": "own", "citation": "..." } }`). Rules and tables may each be
 * left out, not both. A rule's expression is read as text by {@link readExpression}, never run as code.
 *
 * @param json the file's content, parsed
 * @param place what to call the file in messages
 * @throws InputError `chain/own-standard` listing every fault at once, each with its place in the file
 */
export function parseOwnStandard(json: unknown, place: string): OwnStandard {
  const faults = ownStandardFaults(json);
  if (faults.length > 0 || !isFields(json)) {
    throw new InputError('chain/own-standard', `${place} is not a specification:\n- ${faults.join('\n- ')}`, {
      place,
      faults,
    });
  }
  // Each field was checked above; the type system cannot follow a list of faults.
  return { rules: [], tables: [], sources: {}, ...json } as unknown as OwnStandard;
}

/** Every fault of an own specification in words; empty when it is sound. */
export function ownStandardFaults(json: unknown): readonly string[] {
  if (!isFields(json)) return ['the file must hold one object with id, title, edition, range, rules and tables'];
  const faults: Faults = [];
  for (const name of ['id', 'title', 'edition', 'confidence', 'confidenceWhy']) requireText(json, name, name, faults);
  const { id, confidence, range, sources } = json;
  if (typeof id === 'string' && isPublished(id))
    faults.push(`id: "${id}" is a published standard; give yours its own name`);
  if (typeof confidence === 'string' && !/^[A-D]$/.test(confidence)) faults.push('confidence: must be A, B, C or D');
  checkRange(range, faults);
  if (sources !== undefined && !isFields(sources))
    faults.push('sources: must be an object of id to { kind, citation or url }');
  const known = new Set([...Object.keys(rulebook.sources), ...(isFields(sources) ? Object.keys(sources) : [])]);
  const rules = listOf(json, 'rules', faults);
  const tables = listOf(json, 'tables', faults);
  if (rules.length + tables.length === 0) faults.push('rules, tables: at least one of them must hold something');
  rules.forEach((rule, index) => {
    checkRule(rule, `rules[${index}]`, { faults, known });
  });
  tables.forEach((table, index) => {
    checkTable(table, `tables[${index}]`, { faults, known });
  });
  return faults;
}

interface Checking {
  readonly faults: Faults;
  readonly known: ReadonlySet<string>;
}

function checkRule(rule: unknown, at: string, { faults, known }: Checking): void {
  if (!isFields(rule)) {
    faults.push(`${at}: must be an object`);
    return;
  }
  requireText(rule, 'id', `${at}.id`, faults);
  requireText(rule, 'statement', `${at}.statement`, faults);
  checkQuantity(rule, at, faults);
  checkSources(rule.sources, `${at}.sources`, { faults, known });
  const { js, value } = rule;
  if (js === undefined && value === undefined) faults.push(`${at}: needs "js" (an expression over d) or "value"`);
  if (js === undefined) return;
  if (typeof js !== 'string') faults.push(`${at}.js: must be text`);
  else faults.push(...expressionFaults(js, `${at}.js`));
}

function expressionFaults(js: string, at: string): readonly string[] {
  try {
    readExpression(js);
    return [];
  } catch (error) {
    if (error instanceof InputError) return [`${at}: ${error.message}`];
    throw error;
  }
}

function checkTable(table: unknown, at: string, checking: Checking): void {
  const { faults } = checking;
  if (!isFields(table)) {
    faults.push(`${at}: must be an object`);
    return;
  }
  requireText(table, 'id', `${at}.id`, faults);
  const { key, columns } = table;
  if (key !== 'd' && key !== 'trade') faults.push(`${at}.key: must be "d" (mm) or "trade" (inch designation)`);
  if (!isFields(columns)) {
    faults.push(`${at}.columns: must be an object of column name to { quantity, unit, sources }`);
    return;
  }
  if (columns.d === undefined) faults.push(`${at}.columns: needs a column "d", the nominal size in mm`);
  for (const [name, column] of Object.entries(columns)) checkColumn(column, `${at}.columns.${name}`, checking);
  const keys = new Set<unknown>();
  listOf(table, 'rows', faults, `${at}.rows`).forEach((row, index) => {
    checkRow(row, `${at}.rows[${index}]`, { columns, key: String(key), keys, faults });
  });
}

function checkColumn(column: unknown, at: string, { faults, known }: Checking): void {
  if (!isFields(column)) {
    faults.push(`${at}: must be an object`);
    return;
  }
  checkQuantity(column, at, faults);
  const { quantity, unit, sources } = column;
  const isKey = quantity === 'nominalSize' || quantity === 'tradeSize';
  if (!isKey || sources !== undefined) checkSources(sources, `${at}.sources`, { faults, known });
  if (typeof quantity !== 'string' || bareQuantities.has(quantity)) return;
  const bench = benchUnitOf(quantity);
  if (typeof unit !== 'string' || toBenchUnit(1, unit, bench) === null) {
    faults.push(`${at}.unit: "${String(unit)}" cannot be brought to ${bench}`);
  }
}

function checkRow(
  row: unknown,
  at: string,
  table: { readonly columns: Fields; readonly key: string; readonly keys: Set<unknown>; readonly faults: Faults },
): void {
  const { columns, key, keys, faults } = table;
  if (!isFields(row)) {
    faults.push(`${at}: must be an object`);
    return;
  }
  if (typeof row.d !== 'number' || !(row.d > 0)) faults.push(`${at}.d: must be the nominal size in mm, above 0`);
  if (keys.has(row[key])) faults.push(`${at}: ${key} = ${String(row[key])} is there twice`);
  keys.add(row[key]);
  for (const [name, cell] of Object.entries(row)) {
    if (name === 'src' || name === 'doubtful') continue;
    if (columns[name] === undefined) faults.push(`${at}.${name}: there is no such column`);
    else if (!isCell(cell, name)) faults.push(`${at}.${name}: must be a number, or null where none is known`);
  }
}

function isCell(cell: unknown, name: string): boolean {
  if (name === 'trade') return typeof cell === 'string' && cell !== '';
  return cell === null || (typeof cell === 'number' && Number.isFinite(cell));
}

function checkQuantity(fields: Fields, at: string, faults: Faults): void {
  const { quantity } = fields;
  if (typeof quantity === 'string' && Object.hasOwn(rulebook.quantities, quantity)) return;
  faults.push(`${at}.quantity: "${String(quantity)}" is not one of ${Object.keys(rulebook.quantities).join(', ')}`);
}

function checkSources(sources: unknown, at: string, { faults, known }: Checking): void {
  if (!Array.isArray(sources)) {
    faults.push(`${at}: must be a list of source ids`);
    return;
  }
  for (const id of sources) {
    if (typeof id !== 'string' || !known.has(id)) faults.push(`${at}: there is no source "${String(id)}"`);
  }
}

function checkRange(range: unknown, faults: Faults): void {
  const bounds: readonly unknown[] = Array.isArray(range) ? range : [];
  const [least, greatest] = bounds;
  if (
    bounds.length === 2 &&
    typeof least === 'number' &&
    typeof greatest === 'number' &&
    least > 0 &&
    least <= greatest
  ) {
    return;
  }
  faults.push('range: must be the least and the greatest size in mm, as [7, 45]');
}

function listOf(fields: Fields, name: string, faults: Faults, at = name): readonly unknown[] {
  const value = fields[name];
  if (Array.isArray(value)) return value;
  if (value !== undefined || at !== name) faults.push(`${at}: must be a list`);
  return [];
}

function requireText(fields: Fields, name: string, at: string, faults: Faults): void {
  const value = fields[name];
  if (typeof value !== 'string' || value.trim() === '') faults.push(`${at}: must be a text that is not empty`);
}

function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isPublished(id: string): boolean {
  return rulebook.standards.some((entry) => standardId(entry.id) === standardId(id));
}
