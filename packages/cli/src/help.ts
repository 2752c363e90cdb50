import type { Command } from './command.ts';

/** What the tool is and what it can do. */
export function generalHelp(commands: readonly Command[]): string {
  const width = Math.max(...commands.map((command) => command.name.length));
  return [
    'provinghouse: from samples of steel chain to a finding that survives a challenge.',
    '',
    'Usage: provinghouse COMMAND ...',
    '',
    ...commands.map((command) => `  ${command.name.padEnd(width)}  ${command.summary}`),
    '',
    'provinghouse COMMAND --help shows its options and an example. --json gives machine-readable output.',
    'Exit codes: 0 done, 1 the input is at fault, 2 used wrongly, 3 something broke.',
    "The record lives in the folder PROVINGHOUSE_HOME (default: the user's data folder).",
    '',
  ].join('\n');
}

export function commandHelp(command: Command): string {
  const options = Object.entries(command.options).map(([name, option]) => ({
    flag: `--${name}${option.type === 'string' ? ' ...' : ''}`,
    help: option.help,
  }));
  const width = Math.max(0, ...options.map((option) => option.flag.length));
  return [
    command.summary,
    '',
    `Usage: provinghouse ${command.usage}`,
    '',
    ...options.map((option) => `  ${option.flag.padEnd(width)}  ${option.help}`),
    '',
    'Example:',
    `  ${command.example}`,
    '',
  ].join('\n');
}
