import { clockSeconds, InputError, type Unit } from '@provinghouse/core';
import { unitOf } from '../channel/channel.ts';
import { type ScannedNumber, scanNumber } from './number-text.ts';

/** A field of a line: a number with a name. The name `time` is the source's own clock. */
export interface PatternField {
  readonly name: string;
  /** As written between brackets; null when the pattern names none. */
  readonly unit: string | null;
}

type Step =
  | { readonly kind: 'literal'; readonly bytes: Uint8Array }
  | { readonly kind: 'blank' }
  | { readonly kind: 'skip'; readonly until: Uint8Array | null }
  | { readonly kind: 'field'; readonly at: number; readonly isClock: boolean };

export interface LinePattern {
  readonly text: string;
  readonly decimal: '.' | ',';
  readonly fields: readonly PatternField[];
  readonly steps: readonly Step[];
}

/** What became of a line: read in full, another shape altogether, or the right shape with a field that is no number. */
export type LineMatch = 'read' | 'other shape' | { readonly unreadable: string };

const MAXIMUM_LENGTH = 200;
const MAXIMUM_FIELDS = 16;

function patternError(text: string, message: string): InputError {
  return new InputError('source/pattern', `Pattern "${text}": ${message}`, { pattern: text });
}

function asciiBytes(text: string, pattern: string): Uint8Array {
  return Uint8Array.from(text, (letter) => {
    const code = letter.charCodeAt(0);
    if (code < 32 || code > 126) throw patternError(pattern, `"${letter}" is not plain ASCII. Pass it over with {*}.`);
    return code;
  });
}

type Part = { readonly literal: string } | { readonly field: string };

/** Literals and fields in order; {{ and }} are braces. */
function partsOf(text: string): readonly Part[] {
  const parts: Part[] = [];
  let literal = '';
  for (let i = 0; i < text.length; i++) {
    const letter = text.charAt(i);
    if ((letter === '{' || letter === '}') && text.charAt(i + 1) === letter) {
      literal += letter;
      i++;
    } else if (letter === '{') {
      const end = text.indexOf('}', i);
      if (end < 0) throw patternError(text, 'a { is never closed.');
      if (literal) parts.push({ literal });
      literal = '';
      parts.push({ field: text.slice(i + 1, end) });
      i = end;
    } else if (letter === '}') {
      throw patternError(text, 'a } closes nothing; write }} for a brace.');
    } else literal += letter;
  }
  if (literal) parts.push({ literal });
  return parts;
}

function fieldOf(inside: string, text: string): PatternField {
  const found = /^([A-Za-z][A-Za-z0-9_-]{0,39})(?:\[([^\]]{1,20})\])?$/.exec(inside.trim());
  if (!found) throw patternError(text, `{${inside}} is no field; write {name[unit]}, or {*} for what is passed over.`);
  return { name: found[1] ?? '', unit: found[2] ?? null };
}

function literalSteps(literal: string, text: string): readonly Step[] {
  return literal
    .split(/(\s+)/)
    .filter((piece) => piece !== '')
    .map((piece) => (/^\s/.test(piece) ? { kind: 'blank' } : { kind: 'literal', bytes: asciiBytes(piece, text) }));
}

function skipStep(next: Part | undefined, text: string): Step {
  if (!next) return { kind: 'skip', until: null };
  if ('field' in next) throw patternError(text, '{*} must be followed by plain text or end the line.');
  const word = next.literal.trim().split(/\s/)[0] || ' ';
  return { kind: 'skip', until: asciiBytes(word, text) };
}

function checkNeighbours(parts: readonly Part[], text: string, decimal: '.' | ','): void {
  parts.forEach((part, i) => {
    const next = parts[i + 1];
    const after = parts[i + 2];
    if ('literal' in part || part.field.trim() === '*' || !next) return;
    if ('field' in next) throw patternError(text, `nothing parts {${part.field}} from {${next.field}}.`);
    if (next.literal === decimal && after && 'field' in after)
      throw patternError(
        text,
        `"${decimal}" parts two fields and is the decimal sign too; one line could be read in two ways.`,
      );
  });
}

function checkFields(fields: readonly PatternField[], text: string): void {
  if (!fields.some((field) => field.name !== 'time')) throw patternError(text, 'it has no field, such as {force[kN]}.');
  if (fields.length > MAXIMUM_FIELDS) throw patternError(text, `more than ${MAXIMUM_FIELDS} fields.`);
  const names = fields.map((field) => field.name);
  const twice = names.find((name, i) => names.indexOf(name) !== i);
  if (twice !== undefined) throw patternError(text, `the field ${twice} comes twice.`);
}

/**
 * Reads a line pattern: plain text that must be there, `{name[unit]}` for a number, `{time[unit]}` for the source's own clock,
 * `{*}` for anything up to the text that follows, `{{` and `}}` for braces. Blanks match one or more blanks; blanks before a number
 * and at the ends of a line do not count. Every line is matched in one pass without going back, so no pattern can hang.
 * @throws InputError source/pattern with the fault; source/unit-* for a unit of time that is none
 */
export function linePattern(text: string, decimal: '.' | ',' = '.'): LinePattern {
  if (text.length > MAXIMUM_LENGTH)
    throw patternError(`${text.slice(0, 40)}...`, `longer than ${MAXIMUM_LENGTH} letters.`);
  const parts = partsOf(text.trim());
  checkNeighbours(parts, text, decimal);
  const fields: PatternField[] = [];
  const steps = parts.flatMap((part, i): readonly Step[] => {
    const before = parts[i - 1];
    const isAfterSkip = before !== undefined && 'field' in before && before.field.trim() === '*';
    if ('literal' in part) return literalSteps(isAfterSkip ? part.literal.trimStart() || ' ' : part.literal, text);
    if (part.field.trim() === '*') return [skipStep(parts[i + 1], text)];
    const field = fieldOf(part.field, text);
    fields.push(field);
    return [{ kind: 'field', at: fields.length - 1, isClock: timeUnit(field)?.clock ?? false }];
  });
  checkFields(fields, text);
  return { text, decimal, fields, steps };
}

/** Unit of the field `time`; null for every other field. A time without a unit is an InputError. */
export function timeUnit(field: PatternField): Unit | null {
  if (field.name !== 'time') return null;
  if (field.unit === null)
    throw new InputError('source/unit-missing', 'The field time has no unit; write {time[s]} or {time[ms]}.', {});
  const unit = unitOf(field.unit, 'Field time');
  if (unit.dimension !== 'time')
    throw new InputError('source/unit-unfit', `The field time cannot be in ${unit.symbol}.`, {});
  return unit;
}

function isBlank(byte: number | undefined): boolean {
  return byte === 32 || byte === 9;
}

function pastBlanks(line: Uint8Array, at: number): number {
  let i = at;
  while (isBlank(line[i])) i++;
  return i;
}

function startsWith(line: Uint8Array, at: number, word: Uint8Array): boolean {
  for (let i = 0; i < word.length; i++) if (line[at + i] !== word[i]) return false;
  return true;
}

function find(line: Uint8Array, from: number, word: Uint8Array): number {
  for (let i = from; i + word.length <= line.length; i++) if (startsWith(line, i, word)) return i;
  return -1;
}

function wordAt(line: Uint8Array, from: number): string {
  let end = from;
  while (end < line.length && !isBlank(line[end]) && end - from < 20) end++;
  return String.fromCharCode(...line.subarray(from, end));
}

const scanned: ScannedNumber = { value: 0, end: 0 };

function scanClock(line: Uint8Array, from: number): boolean {
  const text = wordAt(line, from);
  const length = /^[\d:.,]*/.exec(text)?.[0].replace(/[.,]$/, '').length ?? 0;
  const seconds = clockSeconds(text.slice(0, length));
  if (seconds === null) return false;
  scanned.value = seconds;
  scanned.end = from + length;
  return true;
}

/** Words that panels send where a number should be: no value, overload, open input. */
const NO_NUMBER = /^[+-]?(nan|inf|infinity|ol|ovl|ovr|over|err|error|null|-{2,}|\*{2,}|#{2,}|\?+)/i;

function notNumber(line: Uint8Array, at: number, field: PatternField): LineMatch {
  const word = wordAt(line, at);
  return NO_NUMBER.test(word) ? { unreadable: `${field.name} is no number: "${word}"` } : 'other shape';
}

/** The place after a step; -1 when the line does not fit it. */
function pastStep(line: Uint8Array, at: number, step: Exclude<Step, { kind: 'field' }>): number {
  if (step.kind === 'blank') return isBlank(line[at]) || at === 0 ? pastBlanks(line, at) : -1;
  if (step.kind === 'literal') return startsWith(line, at, step.bytes) ? at + step.bytes.length : -1;
  return step.until === null ? line.length : find(line, at, step.until);
}

/**
 * Matches one line against the pattern and fills `values`, one for each field in order (own units; a clock in seconds).
 * On anything but 'read' the values mean nothing.
 */
export function matchLine(pattern: LinePattern, line: Uint8Array, values: Float64Array): LineMatch {
  let at = pastBlanks(line, 0);
  for (const step of pattern.steps) {
    if (step.kind === 'field') {
      const from = pastBlanks(line, at);
      const isRead = step.isClock ? scanClock(line, from) : scanNumber(line, from, pattern.decimal, scanned);
      if (!isRead) return notNumber(line, from, pattern.fields[step.at] ?? { name: 'field', unit: null });
      values[step.at] = scanned.value;
      at = scanned.end;
    } else {
      at = pastStep(line, at, step);
      if (at < 0) return 'other shape';
    }
  }
  return pastBlanks(line, at) === line.length ? 'read' : 'other shape';
}
