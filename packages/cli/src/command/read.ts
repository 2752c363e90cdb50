import type { Interval, TraceOptions, TraceReading } from '@provinghouse/core';
import { isInputError } from '@provinghouse/core';
import { type FileReading, readTraceFile } from '@provinghouse/service';
import { type Command, type Invocation, only, positive, text, UsageError, type Values } from '../command.ts';
import { exitCode, reportFailure } from '../exit.ts';
import { columns, shown, wrapped } from '../layout.ts';

export const read: Command = {
  name: 'read',
  usage: 'read TRACE... [--area-mm2 A] [--gauge-length-mm L] [--links N --pitch-mm P] [options] [--json]',
  summary: 'Read recordings of pulls: maximum, parting, stiffness, knee, elongation, energy.',
  options: {
    'area-mm2': { type: 'string', help: 'steel area, for stresses (both legs of a link)' },
    'gauge-length-mm': { type: 'string', help: 'gauge length, for the knee and the elongation' },
    links: { type: 'string', help: 'free links, with --pitch-mm instead of a gauge length' },
    'pitch-mm': { type: 'string', help: 'pitch (inside length) of a link' },
    'offset-pct': { type: 'string', help: 'offset of the knee in per cent of the gauge length; 0.2 when left out' },
    'time-column': {
      type: 'string',
      help: 'column that is time: its name or number, with a unit in brackets if need be: t[ms]',
    },
    'force-column': { type: 'string', help: 'column that is force, likewise: "Load[kN]"' },
    'table-column': { type: 'string', help: 'column that is table (crosshead) travel' },
    'extension-column': { type: 'string', help: 'column that is extension of the links' },
    decimal: { type: 'string', help: 'decimal sign, "." or ",", where the file leaves it open' },
    'rig-class': { type: 'string', help: 'class of ISO 7500-1 of the rig (0.5, 1, 2, 3), for the uncertainty' },
    'rig-range-kn': { type: 'string', help: 'end of the range, where the reading clips' },
    'rig-compliance-mm-per-kn': { type: 'string', help: 'stretch of frame and grips, taken off the table travel' },
    json: { type: 'boolean', help: 'one JSON object for each file, a line each' },
  },
  example: 'provinghouse read pull-7.csv --links 5 --pitch-mm 24 --area-mm2 100.5 --rig-class 1',
  run: readTraces,
};

async function readTraces({ positionals, values, terminal }: Invocation): Promise<number> {
  if (positionals.length === 0) only(positionals, 'at least one recording');
  const options = traceOptions(values);
  let worst: number = exitCode.done;
  for (const file of positionals) {
    try {
      const reading = await readTraceFile({ file, options });
      terminal.out.write(values.json ? `${JSON.stringify(reading)}\n` : printed(reading));
    } catch (error) {
      if (!isInputError(error)) throw error;
      worst = reportFailure(error, { command: read, terminal, json: values.json === true });
    }
  }
  return worst;
}

function traceOptions(values: Values): TraceOptions {
  const number = (key: string, name: string) => {
    const value = positive(values, name);
    return value === undefined ? {} : { [key]: value };
  };
  const word = (key: string, name: string) => {
    const value = text(values, name);
    return value === undefined ? {} : { [key]: value };
  };
  return {
    ...number('area_mm2', 'area-mm2'),
    ...number('gaugeLength_mm', 'gauge-length-mm'),
    ...number('links', 'links'),
    ...number('pitch_mm', 'pitch-mm'),
    ...number('offset_pct', 'offset-pct'),
    columns: {
      ...word('time', 'time-column'),
      ...word('force', 'force-column'),
      ...word('table', 'table-column'),
      ...word('extension', 'extension-column'),
    },
    rig: {
      ...number('classPct', 'rig-class'),
      ...number('rangeMaximum_kN', 'rig-range-kn'),
      ...number('compliance_mm_per_kN', 'rig-compliance-mm-per-kn'),
    },
    ...decimalSign(values),
  };
}

function decimalSign(values: Values): { readonly decimal?: '.' | ',' } {
  const sign = text(values, 'decimal');
  if (sign === undefined) return {};
  if (sign !== '.' && sign !== ',') throw new UsageError(`--decimal takes "." or ",", not "${sign}"`);
  return { decimal: sign };
}

function printed(reading: FileReading): string {
  return [
    `${reading.file}   ${reading.samples} readings, SHA-256 ${reading.sha256.slice(0, 16)}...`,
    ...columnLines(reading),
    '',
    columns(figureRows(reading), [1]),
    ...eventLines(reading),
    ...reading.notes.map((note) => wrapped(note, '  ')),
    '',
    '',
  ].join('\n');
}

function columnLines({ columns: chosen }: TraceReading): string[] {
  return (['time', 'force', 'table', 'extension'] as const).map((signal) => {
    const column = chosen[signal];
    return column
      ? `  ${signal.padEnd(9)} from "${column.name}" in ${column.unit}: ${column.because}`
      : `  ${signal.padEnd(9)} none`;
  });
}

function figureRows(reading: TraceReading): string[][] {
  const u = reading.maximumForceUncertainty_kN;
  return [
    [
      '  maximum force',
      `${reading.maximumIsAtLeast ? 'at least ' : ''}${shown(reading.maximumForce_kN)}`,
      'kN',
      u === null ? '' : `standard uncertainty ${shown(u)} kN`,
    ],
    ['  time at maximum', shown(reading.timeAtMaximum_s), 's', ''],
    ['  parting force', reading.parted ? shown(reading.partingForce_kN) : 'not parted', reading.parted ? 'kN' : '', ''],
    ['  time at parting', shown(reading.timeAtParting_s), 's', ''],
    ['  knee', shown(reading.kneeForce_kN), 'kN', ''],
    ['  stiffness', shown(reading.stiffness_kN_per_mm), 'kN/mm', interval(reading.stiffnessInterval95_kN_per_mm)],
    ['  extension at maximum', shown(reading.extensionAtMaximum_mm), 'mm', ''],
    ['  extension at parting', shown(reading.extensionAtParting_mm), 'mm', ''],
    ['  total ultimate elongation', shown(reading.totalUltimateElongation_pct), '%', ''],
    ['  energy to maximum', shown(reading.energyToMaximum_J), 'J', ''],
    ['  mean stress at maximum', shown(reading.meanStressAtMaximum_N_per_mm2), 'N/mm2', ''],
    ['  table speed', shown(reading.tableSpeed_mm_per_min), 'mm/min', ''],
    ['  force rate', shown(reading.forceRate_kN_per_s), 'kN/s', ''],
    [
      '  zero, noise, resolution',
      [reading.zeroForce_kN, reading.noise_kN, reading.resolution_kN].map(shown).join('  '),
      'kN',
      '',
    ],
  ];
}

function interval(bounds: Interval | null): string {
  return bounds ? `95 % interval ${shown(bounds.lower)} to ${shown(bounds.upper)}` : '';
}

function eventLines(reading: TraceReading): string[] {
  const events = reading.events.map((event) => [
    `  ${event.kind}`,
    `${shown(event.time_s)} s`,
    `${shown(event.force_kN)} kN`,
    event.drop_kN === null ? '' : `drop ${shown(event.drop_kN)} kN`,
    event.regained === null ? '' : event.regained ? 'regained' : 'not regained',
  ]);
  const spikes = reading.spikes.map((spike) => [
    '  spike rejected',
    `${shown(spike.time_s)} s`,
    `${shown(spike.force_kN)} kN`,
    '',
    '',
  ]);
  const rows = [...events, ...spikes];
  return rows.length === 0 ? [''] : ['', columns(rows, [1, 2]), ''];
}
