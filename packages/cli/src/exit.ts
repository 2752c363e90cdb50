import { isInputError } from '@provinghouse/core';
import { type Command, type Terminal, UsageError } from './command.ts';

export const exitCode = { done: 0, inputAtFault: 1, usedWrongly: 2, broke: 3 } as const;

interface Around {
  readonly command: Command;
  readonly terminal: Terminal;
  readonly json: boolean;
}

/** Says what went wrong, to a person or as JSON, on the error stream; returns the exit code. */
export function reportFailure(error: unknown, { command, terminal, json }: Around): number {
  const code = codeOf(error);
  const message = error instanceof Error ? error.message : String(error);
  if (json) {
    terminal.err.write(`${JSON.stringify({ error: { code: stableCode(error), message, ...contextOf(error) } })}\n`);
    return code;
  }
  terminal.err.write(`${message}\n`);
  if (code === exitCode.usedWrongly)
    terminal.err.write(`Usage: provinghouse ${command.usage}\n       provinghouse ${command.name} --help\n`);
  if (code === exitCode.broke && process.env.PROVINGHOUSE_TRACE && error instanceof Error)
    terminal.err.write(`${error.stack}\n`);
  return code;
}

function codeOf(error: unknown): number {
  if (error instanceof UsageError) return exitCode.usedWrongly;
  return isInputError(error) ? exitCode.inputAtFault : exitCode.broke;
}

function stableCode(error: unknown): string {
  if (isInputError(error)) return error.code;
  if (error instanceof UsageError) return 'used-wrongly';
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : 'broke';
}

function contextOf(error: unknown): Readonly<Record<string, unknown>> {
  return isInputError(error) ? error.context : {};
}
