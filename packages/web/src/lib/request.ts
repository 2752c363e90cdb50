import type { Address } from './api/address.ts';
import { text } from './text.ts';

/** A reply that is not the record asked for. */
export interface Fault {
  /** Stable code of the server's catalogue; `no-answer` when there was no reply at all. */
  readonly code: string;
  readonly detail: string;
  /** Code of what was at fault, where it has one of its own: docs/reference/errors.md. */
  readonly fault?: string;
}

export type Reply<T> = { readonly ok: true; readonly record: T } | { readonly ok: false; readonly fault: Fault };

const held = new Map<string, { readonly tag: string; readonly record: unknown; readonly turn: number }>();
let turns = 0;

/**
 * Reads one address of the API. The last record of an address is kept with its entity tag, and asked for again only to hear whether it
 * still holds: the cast trusts the server of the same build, which sends the shape of the contract. An answer that was overtaken by one
 * asked for later gives the later record.
 */
export async function readRecord<T>(at: Address<T> | string): Promise<Reply<T>> {
  const url = urlOf(at);
  const known = held.get(url);
  turns += 1;
  const turn = turns;
  try {
    const headers = known ? { 'if-none-match': known.tag } : {};
    const reply = await fetch(url, { cache: 'no-store', headers });
    const isSame = reply.status === 304 && known !== undefined;
    if (!isSame && !reply.ok) return { ok: false, fault: await faultOf(reply) };
    const record = isSame ? (known.record as T) : ((await reply.json()) as T);
    const later = held.get(url);
    if (later !== undefined && later.turn > turn) return { ok: true, record: later.record as T };
    const tag = isSame ? known.tag : reply.headers.get('etag');
    if (tag !== null) held.set(url, { tag, record, turn });
    return { ok: true, record };
  } catch {
    return { ok: false, fault: { code: 'no-answer', detail: text.fault.offline } };
  }
}

/** The record of an address as last read; undefined before it was. */
export function heldRecord<T>(at: Address<T> | string): T | undefined {
  return held.get(urlOf(at))?.record as T | undefined;
}

function urlOf(at: Address<unknown> | string): string {
  return typeof at === 'string' ? at : at.url;
}

export async function faultOf(reply: Response): Promise<Fault> {
  const body: unknown = await reply.json().catch(() => null);
  const code = member(body, 'code') ?? `status-${reply.status}`;
  const fault = member(body, 'fault');
  return { code, detail: member(body, 'detail') ?? reply.statusText, ...(fault === null ? {} : { fault }) };
}

function member(body: unknown, name: string): string | null {
  if (typeof body !== 'object' || body === null) return null;
  const found: unknown = Reflect.get(body, name);
  return typeof found === 'string' ? found : null;
}
