import type { WatchSample } from '@provinghouse/core';
import type { WordOrder } from '../frame/register.ts';
import { practiceWord } from './mark.ts';

/** Addresses of the practice rig's registers, counted from 0; the same as holding (function 3) and input registers (4). */
export const practiceRegisters = {
  /** Four registers of two ASCII letters: PRACTICE. */
  mark: 0,
  /** Version of this map. */
  version: 4,
  /** 0 waiting, 1 pulling, 2 parted, 3 over. */
  state: 5,
  /** Samples so far, uint32. */
  samples: 6,
  /** The latest sample, float32 each: seconds, kN, mm, mm. A signal the rig lacks is NaN. */
  time_s: 8,
  force_kN: 10,
  table_mm: 12,
  extension_mm: 14,
  /** Sample k lies at `ring + 8 (k mod ringLength)`, laid out as the latest is. */
  ring: 1000,
  ringLength: 1024,
  sampleWidth: 8,
} as const;

export type PullState = 0 | 1 | 2 | 3;

/** Registers of one practice rig. */
export interface RegisterBank {
  readonly put: (sample: WatchSample) => void;
  readonly setState: (state: PullState) => void;
  /** `length` registers from `address`; null where the map has none. */
  readonly read: (address: number, length: number) => number[] | null;
}

export function registerBank(order: WordOrder): RegisterBank {
  const map = practiceRegisters;
  const registers = new Uint16Array(map.ring + map.ringLength * map.sampleWidth);
  const view = new DataView(new ArrayBuffer(4));
  let count = 0;
  const word32 = (address: number) => {
    const [first, second] = order === 'high first' ? [0, 2] : [2, 0];
    registers[address] = view.getUint16(first);
    registers[address + 1] = view.getUint16(second);
  };
  const float = (address: number, value: number | null) => {
    view.setFloat32(0, value ?? Number.NaN);
    word32(address);
  };
  const lay = (address: number, sample: WatchSample) => {
    float(address, sample.time_s);
    float(address + 2, sample.force_kN);
    float(address + 4, sample.table_mm);
    float(address + 6, sample.extension_mm);
  };
  for (let i = 0; i < 4; i++) {
    registers[map.mark + i] = (practiceWord.charCodeAt(2 * i) << 8) | practiceWord.charCodeAt(2 * i + 1);
  }
  registers[map.version] = 1;
  return {
    put: (sample) => {
      lay(map.time_s, sample);
      lay(map.ring + map.sampleWidth * (count % map.ringLength), sample);
      count++;
      view.setUint32(0, count);
      word32(map.samples);
    },
    setState: (state) => {
      registers[map.state] = state;
    },
    read: (address, length) =>
      address < 0 || address + length > registers.length ? null : [...registers.subarray(address, address + length)],
  };
}
