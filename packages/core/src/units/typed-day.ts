/** A day as it was typed, or why there is none. */
export type TypedDay =
  | {
      readonly ok: true;
      /** ISO 8601: 2026-11-25. */
      readonly day: string;
    }
  | {
      readonly ok: false;
      /** `shape`: not year, month and day in that order; `calendar`: written well, but no calendar has it. */
      readonly code: 'empty' | 'shape' | 'calendar';
    };

/** A day with the time on the clock of a wall, or why there is none. */
export type TypedTime =
  | {
      readonly ok: true;
      readonly day: string;
      /** 14:30, with seconds where they are not nought: 14:30:05. */
      readonly clock: string;
    }
  | {
      readonly ok: false;
      /** As of a day; `clock`: written well, but no clock shows it. */
      readonly code: 'empty' | 'shape' | 'calendar' | 'clock';
    };

const oneDay_ms = 86_400_000;
const day = /^(\d{4})-(\d{2})-(\d{2})$|^(\d{4})(\d{2})(\d{2})$/;
const dayAndTime = /^(\S+?)(?:T|\s+)(\d{2}:\d{2}(?::\d{2})?|\d{4}(?:\d{2})?)$/i;
/** What writers put for a hyphen: the hyphens proper, a dash between numbers, a minus. */
const hyphens = /[\u2010-\u2013\u2212]/g;
/** What is copied along without being seen: blank of no width, word joiner, byte order mark. */
const unseen = /[\u200b\u2060\ufeff]/g;

/**
 * Reads a day that a person typed: 2026-11-25 or, without the hyphens, 20261125 (ISO 8601, extended and basic form), blanks around it.
 * Nothing is guessed: 11/25/2026, 25.11.2026 and a year of two digits are refused. A day must be one of the calendar, and of a year that
 * ISO 8601 takes without agreement, 1583 to 9999.
 *
 * @param text as typed; empty or blank text gives `empty`
 */
export function readTypedDay(text: string): TypedDay {
  const trimmed = text.replace(unseen, '').trim().replace(hyphens, '-');
  if (trimmed === '') return { ok: false, code: 'empty' };
  const parts = day.exec(trimmed)?.filter((part) => part !== undefined);
  if (parts === undefined) return { ok: false, code: 'shape' };
  const [, year = '', month = '', dayOfMonth = ''] = parts;
  if (!isCalendarDay(Number(year), Number(month), Number(dayOfMonth))) return { ok: false, code: 'calendar' };
  return { ok: true, day: `${year}-${month}-${dayOfMonth}` };
}

/**
 * Reads a day and the time of a clock that a person typed: 2026-11-25 14:30, a `T` or blanks between, seconds if any, each half also
 * in the basic form (20261125T1430). A day runs from 00:00 to 23:59:59: 24:00 belongs to the next day and is refused, as is a second 60.
 * Of what zone the clock is, is not read and not guessed.
 *
 * @param text as typed; empty or blank text gives `empty`
 */
export function readTypedTime(text: string): TypedTime {
  const trimmed = text.replace(unseen, '').trim();
  if (trimmed === '') return { ok: false, code: 'empty' };
  const [, dayText, clockText] = dayAndTime.exec(trimmed) ?? [];
  if (dayText === undefined || clockText === undefined) return { ok: false, code: 'shape' };
  const read = readTypedDay(dayText);
  if (!read.ok) return read;
  const [hours = '', minutes = '', seconds = '00'] = clockText.replaceAll(':', '').match(/\d{2}/g) ?? [];
  if (Number(hours) > 23 || Number(minutes) > 59 || Number(seconds) > 59) return { ok: false, code: 'clock' };
  return { ok: true, day: read.day, clock: [hours, minutes, ...(seconds === '00' ? [] : [seconds])].join(':') };
}

/**
 * The day so many days later, or earlier where `days` is below nought.
 *
 * @param from ISO 8601, 2026-11-25; null is given where it is no day, or where no day that {@link readTypedDay} takes lies there
 */
export function dayAfter(from: string, days: number): string | null {
  const read = readTypedDay(from);
  if (!read.ok) return null;
  const to = new Date(Date.parse(`${read.day}T00:00:00Z`) + days * oneDay_ms);
  const there = Number.isNaN(to.getTime()) ? null : readTypedDay(to.toISOString().replace(/T.*/, ''));
  return there?.ok ? there.day : null;
}

/** Leap years as the Gregorian calendar has them: by four, not by a hundred, but by four hundred. */
function isCalendarDay(year: number, month: number, dayOfMonth: number): boolean {
  const isLeap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const lengths = [31, isLeap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  return year >= 1583 && dayOfMonth >= 1 && dayOfMonth <= (lengths[month - 1] ?? 0);
}
