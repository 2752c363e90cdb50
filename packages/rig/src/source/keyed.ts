import { InputError, toBench } from '@provinghouse/core';
import { type ChannelConfiguration, openChannel, unitOf } from '../channel/channel.ts';
import { channelGuard } from '../channel/channel-guard.ts';
import { benchNow_s } from '../clock/bench-clock.ts';
import { plainNumber } from '../frame/json-path.ts';
import { printable } from './printable.ts';
import type { Source, SourceSink } from './source.ts';

/** A source whose readings are typed in from a panel. */
export interface KeyedSource extends Source {
  /**
   * Takes what was typed, in the channel's own unit; a decimal point or comma. Kept as rejected when it is no number.
   * @returns the value in bench units, null when it was rejected
   * @throws InputError source/unknown-channel, source/not-started
   */
  key(channel: string, text: string): number | null;
}

/**
 * Readings keyed by hand, at the moment they are entered.
 * @throws InputError source/unit-*, source/range
 */
export function keyedReadings(configurations: readonly ChannelConfiguration[]): KeyedSource {
  const channels = configurations.map((configuration) => openChannel(configuration));
  let sink: SourceSink | null = null;
  const guards = new Map(
    channels.map((channel) => [channel.name, channelGuard(channel, (words) => sink?.trouble(words))]),
  );
  return {
    describe: `keyed by hand: ${channels.map((channel) => `${channel.name} in ${channel.unit}`).join(', ')}`,
    channels,
    clock: 'arrival',
    isPatient: true,
    async start(into) {
      sink = into;
    },
    async stop() {
      sink?.ended('stopped');
      sink = null;
    },
    key(name, text) {
      const channel = channels.find((known) => known.name === name);
      if (!channel)
        throw new InputError('source/unknown-channel', `There is no channel ${name} to key into.`, {
          choices: channels.map((known) => known.name),
        });
      if (!sink) throw new InputError('source/not-started', 'The pull is not armed, so nothing can be keyed.', {});
      const bytes = new TextEncoder().encode(text);
      const number = plainNumber(text, text.includes(',') ? ',' : '.');
      if (number === null) {
        sink.rejected(bytes, `"${printable(bytes)}" is no number`);
        return null;
      }
      const bench = toBench(number, unitOf(channel.unit, name));
      const value = channel.isReversed ? -bench : bench;
      const arrival_s = benchNow_s();
      const quality = guards.get(name)?.quality(value, arrival_s) ?? 'good';
      sink.readings([{ channel: name, value, time_s: arrival_s, arrival_s, quality }]);
      return value;
    },
  };
}
