import { InputError } from '@provinghouse/core';
import { z } from 'zod';

const channelSchema = z.strictObject({
  name: z.string().regex(/^[A-Za-z][A-Za-z0-9_-]{0,39}$/, 'letters, digits, _ and - only, a letter first'),
  signal: z.enum(['force', 'table', 'extension']).optional(),
  unit: z.string().min(1).max(20).optional(),
  range: z.tuple([z.number(), z.number()]).optional(),
  resolution: z.number().positive().optional(),
  calibration: z.string().max(200).optional(),
  isReversed: z.boolean().optional(),
});

const host = z.string().min(1).max(253);
const port = z.int().min(1).max(65535);
const decimal = z.enum(['.', ',']).default('.');
const channels = z.array(channelSchema).max(16).default([]);
const lines = {
  pattern: z.string().min(1).max(200),
  decimal,
  channels,
  isClockFree: z.boolean().optional(),
};
const serial = {
  path: z.string().min(1).max(300),
  baud: z.int().min(50).max(4_000_000).default(9600),
  dataBits: z.union([z.literal(7), z.literal(8)]).default(8),
  parity: z.enum(['none', 'even', 'odd']).default('none'),
  stopBits: z.union([z.literal(1), z.literal(2)]).default(1),
};
const registerNumber = {
  address: z.int().min(0).max(65535),
  type: z.enum(['int16', 'uint16', 'int32', 'uint32', 'float32']),
  wordOrder: z.enum(['high first', 'low first']).default('high first'),
};
const registers = {
  device: z.int().min(0).max(247).default(1),
  registers: z
    .array(
      z.strictObject({
        channel: z.string(),
        ...registerNumber,
        scale: z.number().default(1),
        shift: z.number().default(0),
        kind: z.enum(['holding', 'input']).default('holding'),
      }),
    )
    .min(1)
    .max(16),
  channels,
  every_s: z.number().min(0.001).max(60).default(0.05),
  clock: z.strictObject({ ...registerNumber, unit: z.string().max(20) }).optional(),
  ring: z
    .strictObject({
      counter: z.strictObject(registerNumber),
      from: z.int().min(0).max(65535),
      length: z.int().min(2).max(65535),
      width: z.int().min(1).max(125),
    })
    .optional(),
  isClockFree: z.boolean().optional(),
};
const topic = z.strictObject({
  topic: z.string().min(1).max(300),
  channel: z.string(),
  path: z.string().max(200).optional(),
  timePath: z.string().max(200).optional(),
  timeUnit: z.string().max(20).optional(),
});

/** How a source is wired, as it is kept in Kit: plain data. */
export const sourceConfigurationSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('serial lines'), ...serial, ...lines }),
  z.strictObject({ kind: z.literal('tcp lines'), host, port, silence_s: z.number().min(1).optional(), ...lines }),
  z.strictObject({ kind: z.literal('modbus tcp'), host, port: port.default(502), ...registers }),
  z.strictObject({ kind: z.literal('modbus rtu'), ...serial, ...registers }),
  z.strictObject({
    kind: z.literal('mqtt'),
    broker: z.string().regex(/^mqtts?:\/\/[^\s@]+$/, 'write it like mqtt://host:1883'),
    topics: z.array(topic).min(1).max(16),
    channels,
    decimal,
    isClockFree: z.boolean().optional(),
  }),
  z.strictObject({ kind: z.literal('keyed'), channels: z.array(channelSchema).min(1).max(16) }),
]);

export type SourceConfiguration = z.infer<typeof sourceConfigurationSchema>;

/**
 * Checks a configuration that comes from outside and fills in what is usual (9600 baud, 8N1, decimal point).
 * @throws InputError source/configuration with every fault and its place
 */
export function sourceConfiguration(value: unknown): SourceConfiguration {
  const found = sourceConfigurationSchema.safeParse(value);
  if (found.success) return found.data;
  const faults = found.error.issues.map((issue) => `${issue.path.join('.') || 'configuration'}: ${issue.message}`);
  throw new InputError('source/configuration', `The wiring cannot be used. ${faults.join('; ')}.`, { faults });
}
