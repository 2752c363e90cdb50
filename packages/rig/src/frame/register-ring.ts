import { type RegisterType, registerWidth, type WordOrder } from './register.ts';

/** A number in a device's registers that is no channel: its clock, its count of samples. */
export interface RegisterNumber {
  readonly address: number;
  readonly type: RegisterType;
  readonly wordOrder: WordOrder;
}

/** A buffer in which a device keeps its last samples, so that none is missed between two polls. */
export interface RegisterRing {
  /** Samples made so far. Sample k lies at from + width x (k mod length). */
  readonly counter: RegisterNumber;
  readonly from: number;
  /** Samples in the buffer. */
  readonly length: number;
  /** Registers a sample takes; addresses of channels and clock count from its first. */
  readonly width: number;
}

/** Registers of one request, and how many samples they hold. */
export interface RingRequest {
  readonly from: number;
  readonly samples: number;
}

const MOST_REGISTERS = 125;

/** Whether a number lies inside one sample of the ring. */
export function fitsRing(place: RegisterNumber, ring: RegisterRing): boolean {
  return place.address + registerWidth(place.type) <= ring.width;
}

/** Requests for the samples from `seen` up to `made`, oldest first; a sample is never split and the end of the buffer never crossed. */
export function ringRequests(ring: RegisterRing, seen: number, made: number): readonly RingRequest[] {
  const requests: RingRequest[] = [];
  const most = Math.max(1, Math.floor(MOST_REGISTERS / ring.width));
  let at = seen;
  while (at < made) {
    const slot = at % ring.length;
    const samples = Math.min(most, made - at, ring.length - slot);
    requests.push({ from: ring.from + slot * ring.width, samples });
    at += samples;
  }
  return requests;
}
