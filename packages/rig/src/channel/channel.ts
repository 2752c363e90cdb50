import type { Unit } from '@provinghouse/core';
import { InputError, parseUnit, toBench } from '@provinghouse/core';

/** What a channel stands for in a trace. Others are kept in the record but do not enter it. */
export type ChannelSignal = 'force' | 'table' | 'extension';

/** A channel as it is written in Kit. Range and resolution are in its own unit. */
export interface ChannelConfiguration {
  readonly name: string;
  /** What it stands for; taken from the name when it is force, table or extension. */
  readonly signal?: ChannelSignal | undefined;
  readonly unit?: string | undefined;
  readonly range?: readonly [number, number] | undefined;
  readonly resolution?: number | undefined;
  /** Reference of the calibration certificate. */
  readonly calibration?: string | undefined;
  /** True where the wire carries the opposite sign, as on a cell mounted for compression. */
  readonly isReversed?: boolean | undefined;
}

/** A channel in bench units. */
export interface Channel {
  readonly name: string;
  readonly signal: ChannelSignal | null;
  /** Unit on the wire. */
  readonly unit: string;
  /** Bench unit of its dimension. */
  readonly benchUnit: 'kN' | 'mm';
  /** Bench unit; null when not known. */
  readonly range: readonly [number, number] | null;
  readonly resolution: number | null;
  readonly calibration: string | null;
  readonly isReversed: boolean;
}

const SIGNALS: readonly ChannelSignal[] = ['force', 'table', 'extension'];

function signalNamed(name: string): ChannelSignal | null {
  return SIGNALS.find((signal) => signal === name) ?? null;
}

/** The unit meant by a text, or an InputError that names the place and the choices. Nothing is guessed. */
export function unitOf(text: string, place: string): Unit {
  const found = parseUnit(text);
  if (found.kind === 'known') return found.unit;
  if (found.kind === 'ambiguous') {
    const message = `${place}: the unit "${text}" means several things. Take one of: ${found.choices.join(', ')}.`;
    throw new InputError('source/unit-ambiguous', message, { place, choices: found.choices });
  }
  throw new InputError('source/unit-unknown', `${place}: the unit "${text}" is not known.`, { place });
}

function checkUnit(unit: Unit, signal: ChannelSignal | null, place: string): 'kN' | 'mm' {
  const wanted = signal === 'force' ? 'force' : signal === null ? unit.dimension : 'length';
  if (unit.dimension !== wanted || unit.dimension === 'time') {
    const message = `${place}: ${unit.symbol} is a unit of ${unit.dimension}, a ${signal ?? 'channel'} needs one of ${wanted === 'time' ? 'force or length' : wanted}.`;
    throw new InputError('source/unit-unfit', message, { place });
  }
  return unit.dimension === 'force' ? 'kN' : 'mm';
}

/** Value on the wire to bench unit, sign turned where the channel says so. */
export function benchValue(channel: Channel, unit: Unit, value: number): number {
  const bench = toBench(value, unit);
  return channel.isReversed ? -bench : bench;
}

function benchRange(configuration: ChannelConfiguration, unit: Unit): readonly [number, number] | null {
  if (!configuration.range) return null;
  const [low, high] = configuration.range;
  if (!(low < high)) {
    const message = `Channel ${configuration.name}: the range ${low} to ${high} has no width.`;
    throw new InputError('source/range', message, { channel: configuration.name });
  }
  return [toBench(low, unit), toBench(high, unit)];
}

/**
 * A channel made ready: its unit known and fitting what it stands for, range and resolution in bench units.
 * @throws InputError source/unit-missing, source/unit-unknown, source/unit-ambiguous, source/unit-unfit, source/range
 */
export function openChannel(configuration: ChannelConfiguration, unitOfField?: string | null): Channel {
  const place = `Channel ${configuration.name}`;
  const text = configuration.unit ?? unitOfField ?? null;
  if (text === null) {
    const message = `${place} has no unit. Give it in the pattern, {${configuration.name}[kN]}, or with the channel.`;
    throw new InputError('source/unit-missing', message, { channel: configuration.name });
  }
  const unit = unitOf(text, place);
  if (configuration.unit && unitOfField && unitOf(unitOfField, place).symbol !== unit.symbol) {
    const message = `${place}: the pattern says ${unitOfField}, the channel ${configuration.unit}. Leave one out.`;
    throw new InputError('source/unit-unfit', message, { channel: configuration.name });
  }
  const signal = configuration.signal ?? signalNamed(configuration.name);
  return {
    name: configuration.name,
    signal,
    unit: unit.symbol,
    benchUnit: checkUnit(unit, signal, place),
    range: benchRange(configuration, unit),
    resolution: configuration.resolution === undefined ? null : toBench(configuration.resolution, unit),
    calibration: configuration.calibration ?? null,
    isReversed: configuration.isReversed ?? false,
  };
}

/** The channel of a source that names none: the signal of that name in bench units, its range not known. */
export function plainChannel(name: string): Channel {
  return openChannel({ name, unit: name === 'force' ? 'kN' : 'mm' });
}
