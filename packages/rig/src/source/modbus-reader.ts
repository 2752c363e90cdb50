import { toBench, type Unit } from '@provinghouse/core';
import { benchValue, type Channel, type ChannelConfiguration, openChannel, unitOf } from '../channel/channel.ts';
import { type ChannelGuard, channelGuard } from '../channel/channel-guard.ts';
import { registerValue } from '../frame/register.ts';
import type { RegisterPlace } from '../frame/register-map.ts';
import type { RegisterNumber } from '../frame/register-ring.ts';
import type { RawReading, SourceSink } from './source.ts';

/** The device's own clock. */
export interface RegisterClock extends RegisterNumber {
  readonly unit: string;
}

/** What lies in a stretch of registers that begins at `from`. */
export interface RegisterStretch {
  readonly from: number;
  readonly bytes: Uint8Array;
  readonly arrival_s: number;
}

export interface RegisterReader {
  take(places: readonly RegisterPlace[], stretch: RegisterStretch): RawReading[];
}

interface Known {
  readonly channel: Channel;
  readonly unit: Unit;
  readonly guard: ChannelGuard;
}

/** @throws InputError source/unit-*, source/range */
export function registerChannels(
  places: readonly RegisterPlace[],
  configurations: readonly ChannelConfiguration[],
): readonly Channel[] {
  return places.map(({ channel: name }) =>
    openChannel(configurations.find((configuration) => configuration.name === name) ?? { name }),
  );
}

/** Turns registers into readings. A stretch whose device clock has not moved on holds nothing new and gives none. */
export function registerReader(
  channels: readonly Channel[],
  clock: RegisterClock | null,
  sink: SourceSink,
): RegisterReader {
  const known = new Map<string, Known>();
  for (const channel of channels) {
    const guard = channelGuard(channel, (words) => sink.trouble(words));
    known.set(channel.name, { channel, unit: unitOf(channel.unit, `Channel ${channel.name}`), guard });
  }
  const clockUnit = clock ? unitOf(clock.unit, 'Clock of the device') : null;
  let lastTime_s: number | null = null;

  function valueAt({ from, bytes }: RegisterStretch, { address, type, wordOrder }: RegisterNumber): number | null {
    return registerValue(bytes, 2 * (address - from), type, wordOrder);
  }
  function timeOf(stretch: RegisterStretch): number | null {
    if (!clock || !clockUnit) return stretch.arrival_s;
    const time = valueAt(stretch, clock);
    return time === null ? null : toBench(time, clockUnit);
  }
  function reject(bytes: Uint8Array, what: string): RawReading[] {
    sink.rejected(new Uint8Array(bytes), `${what} is no number`);
    return [];
  }
  function readingOf(place: RegisterPlace, stretch: RegisterStretch, time_s: number): RawReading[] {
    const found = known.get(place.channel);
    const wired = valueAt(stretch, place);
    if (!found || wired === null) return reject(stretch.bytes, place.channel);
    const value = benchValue(found.channel, found.unit, wired * place.scale + place.shift);
    const quality = found.guard.quality(value, time_s);
    return [{ channel: place.channel, value, time_s, arrival_s: stretch.arrival_s, quality }];
  }
  return {
    take(places, stretch) {
      const time_s = timeOf(stretch);
      if (time_s === null) return reject(stretch.bytes, 'the clock');
      if (clock && time_s === lastTime_s) return [];
      lastTime_s = time_s;
      return places.flatMap((place) => readingOf(place, stretch, time_s));
    },
  };
}
