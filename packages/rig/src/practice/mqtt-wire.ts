import { Socket } from 'node:net';
import type { WatchSample } from '@provinghouse/core';
import type { MqttClient } from 'mqtt';
import { laidWire } from './laid-wire.ts';
import { practiceWord } from './mark.ts';
import { checkWireOptions, type PracticeWire, type WireOptions, wireFault } from './wire.ts';

export interface MqttWireOptions extends WireOptions {
  readonly over: 'mqtt';
  /** The broker: `mqtt://127.0.0.1:1883`. */
  readonly broker: string;
  /** Topics lie below this; `practice-rig`. */
  readonly base?: string;
  /** A message for each value on a topic of its own, or all samples of a beat as lines of JSON on `<base>/samples`. */
  readonly layout?: 'topic a signal' | 'samples together';
  /** Quality of service; 1. */
  readonly qos?: 0 | 1 | 2;
}

interface Message {
  readonly topic: string;
  readonly payload: string;
}

/**
 * A practice rig that publishes to a broker. `<base>/practice` is kept by the broker while the wire is up; every payload
 * says that it is practice, so that none can be taken for real when the topic is shared. The broker must not drop
 * messages for slow subscribers (Mosquitto: `max_queued_messages 0`), or the reader's loss is not ours to prevent.
 */
export async function serveMqtt(options: MqttWireOptions): Promise<PracticeWire> {
  checkWireOptions(options);
  const base = options.base ?? 'practice-rig';
  const client = await connected(options.broker);
  const say = (message: Message, retain = false) =>
    client.publishAsync(message.topic, message.payload, { qos: options.qos ?? 1, retain });
  const state = (words: string) => ({ topic: `${base}/practice`, payload: stateText(options.seed, words) });
  await say(state('waiting'), true);
  return laidWire(options, {
    address: `${options.broker.replace(/\/$/, '')}/${base}`,
    port: null,
    over: `MQTT topics below ${base} at ${options.broker}`,
    outlet: {
      send: async (samples) => {
        await Promise.all(messagesOf(samples, base, options).map((message) => say(message)));
      },
      readers: () => 1,
      whenRead: () => Promise.resolve(),
      finish: async () => void (await say(state('parted'), true)),
    },
    takeDown: async () => {
      // An empty retained message takes the mark off the topic, which a real rig may use next.
      if (client.connected) await say({ topic: `${base}/practice`, payload: '' }, true);
      await client.endAsync(!client.connected);
    },
  });
}

async function connected(broker: string): Promise<MqttClient> {
  const { connectAsync } = await import('mqtt');
  try {
    const client = await connectAsync(broker, { connectTimeout: 5000, reconnectPeriod: 200 }, false);
    sendAtOnce(client);
    client.on('connect', () => sendAtOnce(client));
    return client;
  } catch (error) {
    throw wireFault(broker, error);
  }
}

/** Small messages must not wait for the acknowledgement of the one before (Nagle's rule costs 40 ms each). */
function sendAtOnce(client: MqttClient): void {
  if (client.stream instanceof Socket) client.stream.setNoDelay(true);
}

function stateText(seed: number, state: string): string {
  return JSON.stringify({ mark: practiceWord, seed, state, about: 'simulated, not a pull of any chain' });
}

function messagesOf(samples: readonly WatchSample[], base: string, options: MqttWireOptions): Message[] {
  if (options.layout === 'samples together') {
    const payload = samples.map((sample) => JSON.stringify({ ...sample, practice: true })).join('\n');
    return [{ topic: `${base}/samples`, payload }];
  }
  return samples.flatMap((sample) =>
    (
      [
        ['force', sample.force_kN, 'kN'],
        ['table', sample.table_mm, 'mm'],
        ['extension', sample.extension_mm, 'mm'],
      ] as const
    )
      .filter(([, value]) => value !== null)
      .map(([signal, value, unit]) => ({
        topic: `${base}/${signal}`,
        payload: JSON.stringify({ time_s: sample.time_s, value, unit, practice: true }),
      })),
  );
}
