import { InputError, toBench, type Unit } from '@provinghouse/core';
import mqtt, { type IPublishPacket, type MqttClient } from 'mqtt';
import type { Channel, ChannelConfiguration } from '../channel/channel.ts';
import { benchValue, openChannel, unitOf } from '../channel/channel.ts';
import { type ChannelGuard, channelGuard } from '../channel/channel-guard.ts';
import { benchNow_s } from '../clock/bench-clock.ts';
import { atPath, type JsonPath, jsonPath, plainNumber } from '../frame/json-path.ts';
import type { Wire } from './keep-open.ts';
import { clockOf, keptSource } from './kept-source.ts';
import { printable } from './printable.ts';
import type { RawReading, Source, SourceSink } from './source.ts';

/** Where one channel lies in what a broker hands on. */
export interface TopicPlace {
  readonly topic: string;
  readonly channel: string;
  /** Path of the number in a JSON payload; without it the payload is the number. */
  readonly path?: string | undefined;
  /** Path of the sender's own time, and its unit. */
  readonly timePath?: string | undefined;
  readonly timeUnit?: string | undefined;
}

export interface MqttOptions {
  /** mqtt://host:port */
  readonly broker: string;
  readonly topics: readonly TopicPlace[];
  readonly channels: readonly ChannelConfiguration[];
  readonly decimal: '.' | ',';
  readonly isClockFree?: boolean | undefined;
}

interface OpenPlace {
  readonly topic: string;
  readonly channel: Channel;
  readonly unit: Unit;
  readonly path: JsonPath | null;
  readonly time: { readonly path: JsonPath; readonly unit: Unit } | null;
}

function openPlace(place: TopicPlace, channels: readonly ChannelConfiguration[]): OpenPlace {
  if (/[+#]/.test(place.topic))
    throw new InputError('source/topic', `The topic "${place.topic}" stands for several; name one topic.`, {});
  const channel = openChannel(channels.find(({ name }) => name === place.channel) ?? { name: place.channel });
  const time = place.timePath
    ? { path: jsonPath(place.timePath), unit: unitOf(place.timeUnit ?? 's', `Time of ${place.topic}`) }
    : null;
  return {
    topic: place.topic,
    channel,
    unit: unitOf(channel.unit, `Channel ${channel.name}`),
    path: place.path ? jsonPath(place.path) : null,
    time,
  };
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

type Message = { readonly text: string; readonly json: unknown };

function numberAt({ text, json }: Message, path: JsonPath | null, decimal: '.' | ','): number | null {
  return plainNumber(path === null ? text : atPath(json, path), decimal);
}

interface Moment {
  readonly arrival_s: number;
  /** Kept by the broker from before. */
  readonly isOld: boolean;
}

interface Reader {
  message(topic: string, bytes: Uint8Array, isOld: boolean): void;
}

const BAD_BEFORE_TROUBLE = 5;

function topicReader(places: readonly OpenPlace[], decimal: '.' | ',', sink: SourceSink): Reader {
  const guards = new Map<string, ChannelGuard>();
  for (const { channel } of places)
    guards.set(
      channel.name,
      channelGuard(channel, (words) => sink.trouble(words)),
    );
  let bad = 0;
  function reject(topic: string, bytes: Uint8Array, why: string): void {
    sink.rejected(new Uint8Array(bytes), why);
    bad++;
    if (bad === BAD_BEFORE_TROUBLE)
      sink.trouble(`What comes under ${topic} cannot be read (${why}). The last: "${printable(bytes)}".`);
  }
  /** Readings of one line of a payload. */
  function readingsOf(topic: string, bytes: Uint8Array, text: string, moment: Moment): RawReading[] {
    const here = places.filter((place) => place.topic === topic);
    const message = { text, json: here.some(({ path, time }) => path || time) ? jsonOf(text) : undefined };
    if (atPath(message.json, ['practice']) === true) sink.practice?.();
    return here.flatMap(({ channel, unit, path, time }) => {
      const number = numberAt(message, path, decimal);
      const sent = time ? numberAt(message, time.path, decimal) : null;
      if (number === null || (time && sent === null)) {
        reject(topic, bytes, `${number === null ? channel.name : 'the time'} is no number`);
        return [];
      }
      const value = benchValue(channel, unit, number);
      const time_s = time && sent !== null ? toBench(sent, time.unit) : moment.arrival_s;
      const quality = moment.isOld ? 'late' : (guards.get(channel.name)?.quality(value, time_s) ?? 'good');
      return [{ channel: channel.name, value, time_s, arrival_s: moment.arrival_s, quality }];
    });
  }
  return {
    message(topic, bytes, isOld) {
      const moment = { arrival_s: benchNow_s(), isOld };
      sink.bytes?.(bytes, moment.arrival_s, { place: topic, isText: true });
      const lines = new TextDecoder().decode(bytes).split('\n');
      const batch = lines.flatMap((line) => (line.trim() === '' ? [] : readingsOf(topic, bytes, line, moment)));
      if (batch.length === 0) return;
      bad = 0;
      sink.readings(batch);
    },
  };
}

function connected(client: MqttClient): Promise<void> {
  const { promise, resolve, reject } = Promise.withResolvers<void>();
  client.once('connect', () => resolve());
  client.once('error', reject);
  client.once('close', () => reject(new Error('the broker does not answer')));
  return promise;
}

async function openWire(options: MqttOptions, topics: readonly string[], reader: Reader): Promise<Wire> {
  const client = mqtt.connect(options.broker, { reconnectPeriod: 0, connectTimeout: 5000, keepalive: 5 });
  const { promise: closed, resolve } = Promise.withResolvers<string>();
  let why = 'closed by the broker';
  client.on('message', (topic: string, bytes: Uint8Array, packet: IPublishPacket) =>
    reader.message(topic, bytes, packet.retain),
  );
  client.on('error', (error) => {
    why = error.message;
  });
  client.on('close', () => resolve(why));
  try {
    await connected(client);
    await client.subscribeAsync([...topics], { qos: 1 });
  } catch (error) {
    client.end(true);
    throw error;
  }
  return {
    closed,
    async close() {
      await client.endAsync(true);
      resolve('stopped');
    },
  };
}

/**
 * Topics of an MQTT broker, each a number or a number inside JSON; a payload may hold several, a line each. A retained message is from before the connection and marked late.
 * @throws InputError source/topic, source/json-path, source/clocks, source/unit-*, source/range
 */
export function mqttTopics(options: MqttOptions): Source {
  const places = options.topics.map((place) => openPlace(place, options.channels));
  const clocks = places.filter((place) => place.time !== null).length;
  if (clocks !== 0 && clocks !== places.length)
    throw new InputError('source/clocks', 'Some topics carry a time and some do not; make two sources of them.', {});
  const topics = [...new Set(places.map((place) => place.topic))];
  const facts = {
    describe: `${options.broker} ${topics.join(', ')}`,
    channels: places.map((place) => place.channel),
    clock: clockOf(clocks > 0, options.isClockFree),
  };
  return keptSource(facts, (sink) => {
    const reader = topicReader(places, options.decimal, sink);
    return () => openWire(options, topics, reader);
  });
}
