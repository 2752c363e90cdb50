import { type Calculation, calculations, reckon, rulebookIndex } from '@provinghouse/core';
import { type Command, type Invocation, type Terminal, UsageError, type Values } from '../command.ts';
import { exitCode } from '../exit.ts';
import { columns, shown, wrapped } from '../layout.ts';

export const reckonCommand: Command = {
  name: 'reckon',
  usage: 'reckon NAME [--key value]... [--json]   |   reckon --list   |   reckon --rules',
  summary: 'Do a single calculation on its own, with its inputs, units and source.',
  options: {
    list: { type: 'boolean', help: 'list the calculations with their inputs' },
    rules: { type: 'boolean', help: 'list the rulebook: specifications, grades, sizes' },
    json: { type: 'boolean', help: 'inputs, results and source as JSON' },
  },
  example: 'provinghouse reckon grade-breaking-force --grade 30 --size_mm 8',
  freeOptions: true,
  run: async (invocation) => {
    const { positionals, values, terminal } = invocation;
    if (values.list) return listCalculations(values, terminal);
    if (values.rules) return listRules(values, terminal);
    const [name] = positionals;
    if (name === undefined) throw new UsageError('name a calculation, or ask for --list');
    return calculate(name, invocation);
  },
};

function calculate(name: string, { positionals, values, terminal }: Invocation): number {
  const done = reckon(name, inputsOf(values, positionals.slice(1)));
  if (values.json) {
    terminal.out.write(`${JSON.stringify(done)}\n`);
    return exitCode.done;
  }
  const calculation = calculations.find((candidate) => candidate.name === done.name);
  terminal.out.write(
    `${calculation?.title ?? done.name}\n${columns(resultRows(done.outputs, calculation), [1])}\nSource: ${done.source}\n`,
  );
  return exitCode.done;
}

/** An option of its own for each input. A value written after a blank arrives as a positional when options are free: it is paired here. */
function inputsOf(values: Values, loose: readonly string[]): Record<string, string> {
  const rest = [...loose];
  const inputs: Record<string, string> = {};
  for (const [key, value] of Object.entries(values)) {
    if (key === 'json' || value === undefined) continue;
    const given = typeof value === 'string' ? value : rest.shift();
    if (given === undefined) throw new UsageError(`--${key} needs a value`);
    inputs[key] = given;
  }
  if (rest.length > 0) throw new UsageError(`"${rest[0]}" belongs to no option`);
  return inputs;
}

function resultRows(
  outputs: Readonly<Record<string, number | string | null>>,
  calculation: Calculation | undefined,
): string[][] {
  return Object.entries(outputs).map(([key, value]) => {
    const about = calculation?.outputs.find((output) => output.key === key);
    return [
      `  ${key}`,
      typeof value === 'number' ? shown(value) : (value ?? '-'),
      about?.unit ?? '',
      about?.meaning ?? '',
    ];
  });
}

function listCalculations(values: Values, terminal: Terminal): number {
  if (values.json) {
    const described = calculations.map(({ name, title, inputs, outputs, source }) => ({
      name,
      title,
      inputs,
      outputs,
      source,
    }));
    terminal.out.write(`${JSON.stringify(described)}\n`);
    return exitCode.done;
  }
  for (const { name, title, inputs, outputs, source } of calculations) {
    const keys = inputs.map((input) => (input.required ? `--${input.key}` : `[--${input.key}]`)).join(' ');
    terminal.out.write(
      `${name}  ${title}\n  ${keys} -> ${outputs.map((output) => output.key).join(', ')}\n  ${source}\n`,
    );
  }
  return exitCode.done;
}

function listRules(values: Values, terminal: Terminal): number {
  const rules = rulebookIndex();
  if (values.json) terminal.out.write(`${JSON.stringify(rules)}\n`);
  else {
    for (const { id, title, grades, confidence } of rules) {
      terminal.out.write(`${id}  ${title}\n`);
      terminal.out.write(`${wrapped(`grades ${grades.join(', ') || 'none'}; confidence ${confidence}`, '  ')}\n`);
    }
  }
  return exitCode.done;
}
