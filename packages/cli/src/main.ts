import { parseArgs } from 'node:util';
import { type Command, parseOptions, type Terminal, UsageError } from './command.ts';
import { exitCode, reportFailure } from './exit.ts';
import { commandHelp, generalHelp } from './help.ts';

const commands: Readonly<Record<string, () => Promise<Command>>> = {
  read: async () => (await import('./command/read.ts')).read,
  'bring-in': async () => (await import('./command/bring-in.ts')).bringIn,
  plan: async () => (await import('./command/plan.ts')).plan,
  judge: async () => (await import('./command/judge.ts')).judge,
  publish: async () => (await import('./command/publish.ts')).publish,
  export: async () => (await import('./command/export.ts')).exportCampaign,
  template: async () => (await import('./command/template.ts')).template,
  reckon: async () => (await import('./command/reckon.ts')).reckonCommand,
  watch: async () => (await import('./command/watch.ts')).watch,
  'practice-rig': async () => (await import('./command/practice-rig.ts')).practiceRig,
  start: async () => (await import('./command/start.ts')).start,
};

const terminal: Terminal = {
  out: process.stdout,
  err: process.stderr,
  colours: process.stdout.isTTY === true && process.env.NO_COLOR === undefined,
  bars: process.stderr.isTTY === true,
};

async function main(argv: readonly string[]): Promise<number> {
  const [name, ...args] = argv;
  if (name === undefined || name === '--help' || name === 'help') {
    const all = await Promise.all(Object.values(commands).map((load) => load()));
    terminal.out.write(generalHelp(all));
    return name === undefined ? exitCode.usedWrongly : exitCode.done;
  }
  const load = commands[name];
  if (!load) {
    terminal.err.write(`There is no command "${name}". Commands: ${Object.keys(commands).join(', ')}.\n`);
    return exitCode.usedWrongly;
  }
  const command = await load();
  if (args.includes('--help')) {
    terminal.out.write(commandHelp(command));
    return exitCode.done;
  }
  try {
    return await runCommand(command, args);
  } catch (error) {
    return reportFailure(error, { command, terminal, json: args.includes('--json') || args.includes('--ndjson') });
  }
}

async function runCommand(command: Command, args: readonly string[]): Promise<number> {
  const { positionals, values } = parsed(command, args);
  return command.run({ positionals, values, terminal });
}

function parsed(command: Command, args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      options: parseOptions(command),
      allowPositionals: true,
      strict: command.freeOptions !== true,
    });
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}

process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  // The reader of a pipe went away (head, less): nothing is left to say.
  if (error.code === 'EPIPE') process.exit(exitCode.done);
  throw error;
});
process.exitCode = await main(process.argv.slice(2));
