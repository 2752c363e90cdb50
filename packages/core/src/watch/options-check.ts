import { InputError } from '../errors.ts';
import type { WatchOptions } from './state.ts';

function refuse(name: string, value: unknown, cure: string): never {
  throw new InputError('watch/option-out-of-range', `${name} is ${String(value)}: ${cure}.`, { option: name, value });
}

function positive(name: string, value: number | null): void {
  if (value !== null && !(value > 0 && Number.isFinite(value)))
    refuse(name, value, 'give a number above zero, or none');
}

/** Refuses options that cannot be meant: `watch/option-out-of-range` names the option. */
export function checkOptions(options: WatchOptions): void {
  for (const line of options.ruleLines) positive(`The rule line "${line.name}"`, line.force_kN);
  positive('rangeMaximum_kN', options.rangeMaximum_kN);
  positive('fixtureLimit_kN', options.fixtureLimit_kN);
  positive('area_mm2', options.area_mm2);
  if (!(options.silence_s > 0)) refuse('silence_s', options.silence_s, 'give seconds above zero');
  const drop = options.agreedDrop_pct;
  if (drop !== null && !(drop > 0 && drop < 100)) refuse('agreedDrop_pct', drop, 'give a share between 0 and 100 %');
  const window = options.tableSpeedLimits_mm_per_min;
  if (window && !(window[0] >= 0 && window[1] > window[0])) {
    refuse('tableSpeedLimits_mm_per_min', window.join(' to '), 'give the lowest and the highest speed');
  }
}
