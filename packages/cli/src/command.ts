import type { ParseArgsConfig } from 'node:util';

/** Where a command writes: results to `out`, progress and faults to `err`. */
export interface Terminal {
  readonly out: NodeJS.WritableStream;
  readonly err: NodeJS.WritableStream;
  /** True when a person looks at `out`. */
  readonly colours: boolean;
  /** True when a progress bar may be drawn on `err`. */
  readonly bars: boolean;
}

export type Values = Readonly<Record<string, string | boolean | (string | boolean)[] | undefined>>;

export interface Invocation {
  readonly positionals: readonly string[];
  readonly values: Values;
  readonly terminal: Terminal;
}

export interface Option {
  readonly type: 'string' | 'boolean';
  readonly help: string;
}

export interface Command {
  readonly name: string;
  readonly usage: string;
  readonly summary: string;
  readonly options: Readonly<Record<string, Option>>;
  readonly example: string;
  /** True where the command takes options that it names itself at run time. */
  readonly freeOptions?: boolean;
  readonly run: (invocation: Invocation) => Promise<number>;
}

/** The command line is at fault: printed with the usage, exit code 2. */
export class UsageError extends Error {}

export function parseOptions(command: Command): NonNullable<ParseArgsConfig['options']> {
  return Object.fromEntries(Object.entries(command.options).map(([name, { type }]) => [name, { type }]));
}

/** A text option, or undefined when it was not given. */
export function text(values: Values, name: string): string | undefined {
  const value = values[name];
  return typeof value === 'string' ? value : undefined;
}

/** A positive number given as an option; a decimal comma is accepted. */
export function positive(values: Values, name: string): number | undefined {
  const given = text(values, name);
  if (given === undefined) return undefined;
  const value = Number(given.replace(',', '.'));
  if (given.trim() === '' || !Number.isFinite(value) || value <= 0) {
    throw new UsageError(`--${name} takes a number above zero, not "${given}"`);
  }
  return value;
}

/** The one thing a command works on. */
export function only(positionals: readonly string[], what: string): string {
  const [first, ...rest] = positionals;
  if (first === undefined) throw new UsageError(`name ${what}`);
  if (rest.length > 0) throw new UsageError(`one ${what} at a time; "${rest[0]}" is too much`);
  return first;
}
