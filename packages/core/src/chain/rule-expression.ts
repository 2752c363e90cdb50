import { InputError } from '../errors.ts';
import { nearestR10, roundDownR40, roundUpR20, toPrecision3 } from './preferred-number.ts';

/** A part of an expression, read but not yet computed. */
type Node = (variables: Readonly<Record<string, unknown>>) => number;

interface Reader {
  readonly text: string;
  readonly tokens: readonly string[];
  position: number;
}

const helpers: Readonly<Record<string, (value: number) => number>> = {
  roundDownR40,
  roundUpR20,
  nearestR10,
  toPrecision3,
};

const variableNames: ReadonlySet<string> = new Set(['d', 'p', 'k', 'breakingForce', 'mbf', 'stud']);
const tokenPattern = /\s*(Math\.PI|\d+(?:\.\d+)?(?:e[+-]?\d+)?|[A-Za-z]\w*|<=|>=|[-+*/()<>?:])/y;

/**
 * Value of a rule expression of an own specification: numbers, `d`, `p`, `k`, `breakingForce`, `stud`, `Math.PI`, the
 * four operations, brackets, `a < b ? x : y`, and the roundings of preferred numbers. Nothing else is understood, and
 * nothing is run as code. A variable that is not known makes the value NaN.
 *
 * @throws InputError `chain/rule-expression` naming the part that cannot be read
 */
export function evaluateExpression(text: string, variables: Readonly<Record<string, unknown>>): number {
  return readExpression(text)(variables);
}

/** Reads an expression without computing it, to find its faults. */
export function readExpression(text: string): Node {
  const reader: Reader = { text, tokens: tokensOf(text), position: 0 };
  const node = readChoice(reader);
  if (reader.position < reader.tokens.length) throw fault(reader, reader.tokens[reader.position] ?? '');
  return node;
}

function tokensOf(text: string): readonly string[] {
  const tokens: string[] = [];
  tokenPattern.lastIndex = 0;
  while (tokenPattern.lastIndex < text.trimEnd().length) {
    const start = tokenPattern.lastIndex;
    const token = tokenPattern.exec(text)?.[1];
    if (token === undefined) throw fault({ text }, text.slice(start).trim());
    tokens.push(token);
  }
  return tokens;
}

function readChoice(reader: Reader): Node {
  const condition = readComparison(reader);
  if (!take(reader, '?')) return condition;
  const then = readChoice(reader);
  if (!take(reader, ':')) throw fault(reader, reader.tokens[reader.position] ?? 'the end');
  const otherwise = readChoice(reader);
  return (variables) => {
    const outcome = condition(variables);
    if (Number.isNaN(outcome)) return Number.NaN;
    return outcome === 0 ? otherwise(variables) : then(variables);
  };
}

function readComparison(reader: Reader): Node {
  const left = readSum(reader);
  for (const sign of ['<=', '>=', '<', '>'] as const) {
    if (!take(reader, sign)) continue;
    const right = readSum(reader);
    return (variables) => compare(left(variables), sign, right(variables));
  }
  return left;
}

function compare(left: number, sign: '<=' | '>=' | '<' | '>', right: number): number {
  if (Number.isNaN(left) || Number.isNaN(right)) return Number.NaN;
  const holds = { '<=': left <= right, '>=': left >= right, '<': left < right, '>': left > right }[sign];
  return holds ? 1 : 0;
}

function readSum(reader: Reader): Node {
  let node = readProduct(reader);
  for (;;) {
    const left = node;
    if (take(reader, '+')) {
      const right = readProduct(reader);
      node = (variables) => left(variables) + right(variables);
    } else if (take(reader, '-')) {
      const right = readProduct(reader);
      node = (variables) => left(variables) - right(variables);
    } else return node;
  }
}

function readProduct(reader: Reader): Node {
  let node = readAtom(reader);
  for (;;) {
    const left = node;
    if (take(reader, '*')) {
      const right = readAtom(reader);
      node = (variables) => left(variables) * right(variables);
    } else if (take(reader, '/')) {
      const right = readAtom(reader);
      node = (variables) => left(variables) / right(variables);
    } else return node;
  }
}

function readAtom(reader: Reader): Node {
  if (take(reader, '-')) {
    const inner = readAtom(reader);
    return (variables) => -inner(variables);
  }
  if (take(reader, '(')) return readBracket(reader);
  const token = reader.tokens[reader.position];
  if (token === undefined) throw fault(reader, 'the end');
  reader.position += 1;
  if (token === 'Math.PI') return () => Math.PI;
  if (/^\d/.test(token)) return () => Number(token);
  const helper = Object.hasOwn(helpers, token) ? helpers[token] : undefined;
  if (helper !== undefined && take(reader, '(')) {
    const inner = readBracket(reader);
    return (variables) => helper(inner(variables));
  }
  if (!variableNames.has(token)) throw fault(reader, token);
  return (variables) => {
    const value = variables[token];
    return typeof value === 'boolean' ? Number(value) : typeof value === 'number' ? value : Number.NaN;
  };
}

function readBracket(reader: Reader): Node {
  const inner = readChoice(reader);
  if (!take(reader, ')')) throw fault(reader, reader.tokens[reader.position] ?? 'the end');
  return inner;
}

function take(reader: Reader, token: string): boolean {
  if (reader.tokens[reader.position] !== token) return false;
  reader.position += 1;
  return true;
}

function fault({ text }: { readonly text: string }, part: string): InputError {
  return new InputError(
    'chain/rule-expression',
    `The rule "${text}" cannot be read at "${part}". It may hold numbers, d, p, k, breakingForce, stud, Math.PI, + - * / ( ), comparisons with ? and :, and ${Object.keys(helpers).join(', ')}.`,
    { expression: text, part },
  );
}
