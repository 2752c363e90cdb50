import { fromBench, InputError, type Unit, type WatchSample } from '@provinghouse/core';
import { unitOf } from '../channel/channel.ts';
import { linePattern, type PatternField } from '../frame/line-pattern.ts';
import { rangeFor_kN } from './practice-chain.ts';
import type { PracticeOptions } from './practice-options.ts';

export interface LineOptions {
  /** Written the way a reader would write it, so that one pattern serves both ends: `F {force[kN]} T {time[s]}`. */
  readonly pattern?: string;
  readonly lineEnd?: '\n' | '\r\n' | '\r';
}

export type LineWriter = (samples: readonly WatchSample[]) => string;

type Signal = 'time' | 'force' | 'table' | 'extension';

/** The lines a rig sends unless told otherwise. */
export function usualPattern(hasGauge: boolean): string {
  return `F {force[kN]} T {time[s]} X {table[mm]}${hasGauge ? ' E {extension[mm]}' : ''}`;
}

/**
 * Compiles a pattern into a writer of lines. Numbers carry as many digits as the display's step is worth in their unit.
 * Throws `InputError` on a pattern the readers would not take, on `{*}`, and on signals this rig does not have.
 */
export function lineWriter(options: PracticeOptions & LineOptions): LineWriter {
  const hasGauge = options.rig?.hasGauge ?? true;
  const pattern = linePattern(options.pattern ?? usualPattern(hasGauge));
  const pieces = pattern.steps.map((step): string | ((sample: WatchSample) => string) => {
    if (step.kind === 'blank') return ' ';
    if (step.kind === 'literal') return new TextDecoder().decode(step.bytes);
    const field = step.kind === 'field' ? pattern.fields[step.at] : undefined;
    if (field === undefined) throw fault('{*} says nothing to a writer; write plain text there');
    return fieldWriter(field, options);
  });
  const lineEnd = options.lineEnd ?? '\n';
  return (samples) => {
    let text = '';
    for (const sample of samples) {
      for (const piece of pieces) text += typeof piece === 'string' ? piece : piece(sample);
      text += lineEnd;
    }
    return text;
  };
}

function fault(why: string): InputError {
  return new InputError('practice/pattern', `practice rig: ${why}`);
}

function fieldWriter(field: PatternField, options: PracticeOptions): (sample: WatchSample) => string {
  const signal = signalOf(field.name, options.rig?.hasGauge ?? true);
  const dimension = signal === 'time' ? 'time' : signal === 'force' ? 'force' : 'length';
  if (field.unit === null) throw fault(`the field ${field.name} has no unit; write {${field.name}[unit]}`);
  const unit = unitOf(field.unit, `Field ${field.name}`);
  if (unit.dimension !== dimension || unit.clock) throw fault(`${field.name} cannot be sent in ${unit.symbol}`);
  const digits = digitsOf(signal, unit, options);
  const key = `${signal}_${signal === 'time' ? 's' : signal === 'force' ? 'kN' : 'mm'}` as const;
  return (sample) => {
    const value: number | null = Reflect.get(sample, key);
    return value === null ? 'nan' : fromBench(value, unit).toFixed(digits);
  };
}

function signalOf(name: string, hasGauge: boolean): Signal {
  if (name === 'extension' && !hasGauge) throw fault('this rig has no gauge on the piece; leave {extension} out');
  if (name === 'time' || name === 'force' || name === 'table' || name === 'extension') return name;
  throw fault(`{${name}} is no signal of the practice rig; it has time, force, table and extension`);
}

function digitsOf(signal: Signal, unit: Unit, options: PracticeOptions): number {
  if (signal === 'time') return digitsFor(fromBench(1 / (options.rate_Hz ?? 100), unit));
  const rig = options.rig ?? {};
  const range_kN = rig.rangeMaximum_kN ?? rangeFor_kN(options.chain ?? {});
  const step = signal === 'force' ? (rig.resolution_kN ?? 0.0001 * range_kN) : (rig.travelResolution_mm ?? 0.01);
  return step === 0 ? 6 : digitsFor(fromBench(step, unit));
}

/** Fewest decimals, 6 at most, that write every multiple of the step without rounding. */
function digitsFor(step: number): number {
  for (let digits = 0; digits < 6; digits++) {
    const whole = step * 10 ** digits;
    if (Math.abs(whole - Math.round(whole)) < 1e-9 * whole && Math.round(whole) > 0) return digits;
  }
  return 6;
}
