import { readTypedDay, readTypedTime } from '@provinghouse/core';
import { text } from '../text.ts';
import { today } from './today.ts';

/** What was typed into a field of days or times, or what is wrong with it: a part of a sentence about the field. */
export type WhenReading =
  | {
      readonly ok: true;
      /** As it is kept: a day, or an instant in UTC. */
      readonly value: string;
      /** As the field shows it. */
      readonly shown: string;
    }
  | { readonly ok: false; readonly fault: string };

const words = text.entry.when;

/** Reads a typed day: 2026-11-25. */
export function readDay(typed: string): WhenReading {
  const read = readTypedDay(typed);
  if (read.ok) return { ok: true, value: read.day, shown: read.day };
  return { ok: false, fault: words.day[read.code] };
}

/**
 * Reads a typed day and time, 2026-11-25 14:30, by the clock of this bench, as an instant. A time that this clock leaves out when summer
 * time begins is a fault; one that it shows twice when summer time ends is its first showing (ECMAScript, local time to UTC).
 */
export function readTime(typed: string): WhenReading {
  const read = readTypedTime(typed);
  if (!read.ok) return { ok: false, fault: words.time[read.code] };
  const value = wholeSeconds(new Date(`${read.day}T${read.clock}`));
  const shown = `${read.day} ${read.clock}`;
  return timeText(value) === shown ? { ok: true, value, shown } : { ok: false, fault: words.leftOut };
}

/** The instant that a typed day and time mean by the clock of this bench, ISO 8601 in UTC; null while they mean none. */
export function instantOf(typed: string): string | null {
  const read = readTime(typed);
  return read.ok ? read.value : null;
}

/** An instant by the clock of this bench: 2026-11-25 14:30, with seconds where they are not nought. Null, or what is none: empty. */
export function timeText(instant: string | null): string {
  const at = new Date(instant ?? Number.NaN);
  if (Number.isNaN(at.getTime())) return '';
  const parts = [at.getHours(), at.getMinutes(), ...(at.getSeconds() === 0 ? [] : [at.getSeconds()])];
  return `${today(at)} ${parts.map((part) => String(part).padStart(2, '0')).join(':')}`;
}

/** A moment as an instant to the minute: nobody at a bench means the seconds. */
export function minuteOf(at: Date): string {
  return wholeSeconds(new Date(Math.floor(at.getTime() / 60_000) * 60_000));
}

function wholeSeconds(at: Date): string {
  return at.toISOString().replace(/\.\d{3}Z$/, 'Z');
}
