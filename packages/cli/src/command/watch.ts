import { join } from 'node:path';
import type { RuleLine, TraceOptions, WatchOptions } from '@provinghouse/core';
import { recordHome } from '@provinghouse/service';
import { type WatchedWires, type WatchNews, watchSource } from '@provinghouse/service/pull';
import { type Command, type Invocation, positive, text, UsageError, type Values } from '../command.ts';
import { exitCode } from '../exit.ts';
import { shown } from '../layout.ts';
import { stopped } from '../stopped.ts';

export const watch: Command = {
  name: 'watch',
  usage: 'watch (--source ADDRESS --pattern PATTERN | --kit FILE) [--rules KN,KN] [--area-mm2 A] [options] [--ndjson]',
  summary: 'Follow a pull on a wire: stages, rule lines, forecast, final reading; every reading is kept.',
  options: {
    source: { type: 'string', help: 'tcp://host:port, or serial:/dev/ttyUSB0?baud=9600' },
    kit: {
      type: 'string',
      help: 'file of Kit that says how the rig is wired, in place of --source: any wire, or several',
    },
    pattern: { type: 'string', help: 'how a line reads, a field in braces: "F {force[kN]} X {table[mm]}"' },
    decimal: { type: 'string', help: 'decimal sign on the wire, "." or ","; a point when left out' },
    rules: { type: 'string', help: 'forces to be passed, in kN, parted by commas' },
    'area-mm2': { type: 'string', help: 'steel area of both legs, for stresses' },
    'speed-window': { type: 'string', help: 'table speed the method allows, mm/min: 10,60' },
    'range-kn': { type: 'string', help: 'greatest force the rig is verified for' },
    'rig-class': { type: 'string', help: 'class of ISO 7500-1 of the rig, for the uncertainty of the final reading' },
    'silence-s': { type: 'string', help: 'seconds without a reading that end the recording; 10 when left out' },
    'free-clock': { type: 'boolean', help: 'the clock on the wire may run faster or slower than ours (practice)' },
    keep: {
      type: 'string',
      help: 'folder the recording is kept in; "watched" in the folder of the record if left out',
    },
    ndjson: { type: 'boolean', help: 'one JSON object a line' },
  },
  example:
    "provinghouse watch --source tcp://127.0.0.1:4001 --pattern 'F {force[kN]} T {time[s]} X {table[mm]} E {extension[mm]}' --rules 20.1,40.2",
  run: watchPull,
};

async function watchPull({ positionals, values, terminal }: Invocation): Promise<number> {
  if (positionals.length > 0) throw new UsageError(`"${positionals[0]}" is too much; the wire is named by --source`);
  const isJson = values.ndjson === true;
  const operator = new AbortController();
  void stopped().then(() => operator.abort());
  await watchSource({
    wires: watchedWires(values),
    watch: watchOptions(values),
    trace: traceOptions(values),
    folder: text(values, 'keep') ?? join(recordHome(process.env), 'watched'),
    now: () => new Date(),
    tell: (news) => terminal.out.write(isJson ? `${JSON.stringify(news)}\n` : `${wordsOf(news)}\n`),
    stop: operator.signal,
  });
  return exitCode.done;
}

function watchedWires(values: Values): WatchedWires {
  const kit = text(values, 'kit');
  if (kit !== undefined) {
    const both = ['source', 'pattern', 'decimal', 'free-clock'].find((name) => values[name] !== undefined);
    if (both !== undefined) throw new UsageError(`--${both} goes with --source; with --kit it stands in the file`);
    return { kit };
  }
  const decimal = decimalSign(values);
  return {
    source: needed(values, 'source'),
    pattern: needed(values, 'pattern'),
    ...(decimal === undefined ? {} : { decimal }),
    isClockFree: values['free-clock'] === true,
  };
}

function needed(values: Values, name: string): string {
  const given = text(values, name);
  if (given === undefined || given.trim() === '') throw new UsageError(`--${name} is needed`);
  return given;
}

function decimalSign(values: Values): '.' | ',' | undefined {
  const sign = text(values, 'decimal');
  if (sign === undefined || sign === '.' || sign === ',') return sign;
  throw new UsageError(`--decimal takes "." or ",", not "${sign}"`);
}

/** Numbers above zero, parted by commas; here a decimal sign is a point. */
function numbers(values: Values, name: string): number[] {
  const given = text(values, name);
  if (given === undefined) return [];
  return given.split(',').map((part) => {
    const value = Number(part);
    if (part.trim() === '' || !(value > 0)) throw new UsageError(`--${name} takes numbers above zero, not "${given}"`);
    return value;
  });
}

function watchOptions(values: Values): WatchOptions {
  const forces = [...new Set(numbers(values, 'rules'))].sort((a, b) => a - b);
  const ruleLines: RuleLine[] = forces.map((force_kN) => ({ name: `${force_kN} kN`, force_kN }));
  const [slow, fast, ...more] = numbers(values, 'speed-window');
  if (slow !== undefined && (fast === undefined || more.length > 0 || fast < slow))
    throw new UsageError('--speed-window takes two numbers, the lower first: 10,60');
  return {
    ruleLines,
    tableSpeedLimits_mm_per_min: slow === undefined || fast === undefined ? null : [slow, fast],
    rangeMaximum_kN: positive(values, 'range-kn') ?? null,
    fixtureLimit_kN: null,
    area_mm2: positive(values, 'area-mm2') ?? null,
    agreedDrop_pct: null,
    silence_s: positive(values, 'silence-s') ?? 10,
  };
}

function traceOptions(values: Values): TraceOptions {
  const area_mm2 = positive(values, 'area-mm2');
  const classPct = positive(values, 'rig-class');
  const rangeMaximum_kN = positive(values, 'range-kn');
  return {
    ...(area_mm2 === undefined ? {} : { area_mm2 }),
    rig: {
      ...(classPct === undefined ? {} : { classPct }),
      ...(rangeMaximum_kN === undefined ? {} : { rangeMaximum_kN }),
    },
  };
}

function at(time_s: number | null): string {
  return `${time_s === null ? '' : time_s.toFixed(1)}`.padStart(7);
}

/** News for a person: the time first, then what happened. */
function wordsOf(news: WatchNews): string {
  switch (news.kind) {
    case 'practice':
      return 'PRACTICE: what comes on this wire is simulated.';
    case 'readings':
      return `${at(news.time_s)}  ${shown(news.force_kN)} kN, maximum so far ${shown(news.maximumSoFar_kN)} kN`;
    case 'stage':
      return `${at(news.time_s)}  stage: ${news.stage}`;
    case 'rule':
      return `${at(news.time_s)}  passed ${news.name}`;
    case 'forecast':
      return `${at(news.time_s)}  forecast of the maximum ${shown(news.maximum_kN)} kN, nine times in ten ${shown(news.lower90_kN)} to ${shown(news.upper90_kN)} kN`;
    case 'range':
      return `${at(news.time_s)}  verified range: ${news.rangeGuard}`;
    case 'trouble':
      return `${at(news.time_s)}  ${news.words}`;
    case 'ended':
      return `${at(news.view.time_s)}  ended: ${news.view.ended}; ${news.samples} samples kept`;
    case 'reading':
      return finalWords(news);
  }
}

function finalWords({ reading, file, sha256 }: Extract<WatchNews, { readonly kind: 'reading' }>): string {
  const u = reading.maximumForceUncertainty_kN;
  return [
    `Maximum ${reading.maximumIsAtLeast ? 'at least ' : ''}${shown(reading.maximumForce_kN)} kN${u === null ? '' : `, standard uncertainty ${shown(u)} kN`}.`,
    ...reading.notes,
    `Kept in ${file}, SHA-256 ${sha256.slice(0, 16)}...`,
  ].join('\n');
}
