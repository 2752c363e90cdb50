import { setTimeout } from 'node:timers/promises';
import { type PracticeWire, type ServePracticeOptions, servePractice, usualPattern } from '@provinghouse/service/pull';
import { type Command, type Invocation, positive, text, UsageError, type Values } from '../command.ts';
import { exitCode } from '../exit.ts';
import { shown } from '../layout.ts';
import { stopped } from '../stopped.ts';

export const practiceRig: Command = {
  name: 'practice-rig',
  usage: 'practice-rig --serve tcp|pty|modbus|rtu|mqtt [--port N] [--rate HZ] [--seed N] [--speed X] [--ndjson]',
  summary: 'Serve a simulated pull on a wire, to practise with and to test the wires.',
  options: {
    serve: {
      type: 'string',
      help: 'wire: tcp or pty (lines), modbus (registers over TCP), rtu (registers over a pty), mqtt (a broker must run)',
    },
    port: { type: 'string', help: 'port of tcp and modbus; any free one when left out' },
    path: {
      type: 'string',
      help: 'path of the pty of pty and rtu; a new one below the temporary folder when left out',
    },
    broker: { type: 'string', help: 'broker of mqtt; mqtt://127.0.0.1:1883 when left out' },
    rate: { type: 'string', help: 'samples a second; 100 when left out' },
    seed: { type: 'string', help: 'whole number: the same seed pulls the same chain; 1 when left out' },
    speed: { type: 'string', help: 'simulated seconds for each real one; 1 when left out' },
    'size-mm': { type: 'string', help: 'nominal bar diameter; 8 when left out' },
    links: { type: 'string', help: 'free links; 5 when left out' },
    ndjson: { type: 'boolean', help: 'one JSON object a line: where it serves, and at the end what truly happened' },
  },
  example: 'provinghouse practice-rig --serve tcp --port 4001 --seed 7',
  run: servePull,
};

async function servePull({ positionals, values, terminal }: Invocation): Promise<number> {
  if (positionals.length > 0) throw new UsageError(`"${positionals[0]}" is too much; the wire is named by --serve`);
  const options = wireOptions(values);
  const wire = await servePractice(options);
  const isJson = values.ndjson === true;
  const print = (words: string, record: object) =>
    terminal.out.write(isJson ? `${JSON.stringify(record)}\n` : `${words}\n`);
  const pattern = options.over === 'tcp' || options.over === 'pty' ? usualPattern(true) : null;
  print(servingWords(wire, pattern), { kind: 'serving', isPractice: true, address: wire.address, pattern });
  try {
    await Promise.race([wire.ended, stopped()]);
    // Over these a reader fetches the last of it itself, or has it still before it; taking the wire down would cut it off.
    if (options.over !== 'tcp') await Promise.race([setTimeout(lastRead_ms), stopped()]);
    const truth = wire.truth();
    const { maximumForce_kN, mode } = truth;
    print(`Truth: maximum ${shown(maximumForce_kN)} kN, ${mode === null ? 'not parted' : `parted (${mode})`}.`, {
      kind: 'truth',
      ...truth,
    });
  } finally {
    await wire.stop();
  }
  return exitCode.done;
}

/** Time left to readers after the end, ms. */
const lastRead_ms = 1000;

function servingWords(wire: PracticeWire, pattern: string | null): string {
  // A broker does not say whether anybody listens.
  const isRead = !wire.address.startsWith('mqtt');
  return [
    `PRACTICE: ${wire.describe}. Simulated; no chain is pulled.`,
    `It serves at ${wire.address} and begins ${isRead ? 'when somebody reads' : 'now'}. Stop it with Ctrl+C.`,
    pattern === null ? 'How to read it: docs/how-to/watch-a-pull.md, a file for each wire.' : `Its lines: ${pattern}`,
  ].join('\n');
}

function whole(values: Values, name: string): number | undefined {
  const given = text(values, name);
  if (given === undefined) return undefined;
  if (!/^-?\d{1,15}$/.test(given)) throw new UsageError(`--${name} takes a whole number, not "${given}"`);
  return Number(given);
}

function wireOptions(values: Values): ServePracticeOptions {
  const port = whole(values, 'port');
  const path = text(values, 'path');
  const size_mm = positive(values, 'size-mm');
  const links = whole(values, 'links');
  const shared = {
    seed: whole(values, 'seed') ?? 1,
    rate_Hz: positive(values, 'rate') ?? 100,
    speed: positive(values, 'speed') ?? 1,
    chain: { ...(size_mm === undefined ? {} : { size_mm }), ...(links === undefined ? {} : { links }) },
  };
  const over = text(values, 'serve');
  if (over === 'tcp' || over === 'modbus') return { over, ...shared, ...(port === undefined ? {} : { port }) };
  if (over === 'pty' || over === 'rtu') return { over, ...shared, ...(path === undefined ? {} : { path }) };
  if (over === 'mqtt') return { over, ...shared, broker: text(values, 'broker') ?? 'mqtt://127.0.0.1:1883' };
  throw new UsageError(`--serve takes tcp, pty, modbus, rtu or mqtt, not "${over ?? ''}"`);
}
