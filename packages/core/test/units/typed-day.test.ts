import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { dayAfter, readTypedDay, readTypedTime } from '../../src/units/index.ts';

const dayOf = (text: string) => {
  const read = readTypedDay(text);
  return read.ok ? read.day : read.code;
};
const timeOf = (text: string) => {
  const read = readTypedTime(text);
  return read.ok ? `${read.day} ${read.clock}` : read.code;
};

/** The days from 1900 to 2200 as the language counts them, one after the other (ECMAScript Date, proleptic Gregorian calendar). */
function everyDay(): readonly string[] {
  const days: string[] = [];
  for (let at = Date.UTC(1900, 0, 1); at < Date.UTC(2201, 0, 1); at += 86_400_000)
    days.push(new Date(at).toISOString().slice(0, 10));
  return days;
}
const days = everyDay();
const one = fc.constantFrom(...days);
const two = (least: number, greatest: number) =>
  fc.integer({ min: least, max: greatest }).map((part) => String(part).padStart(2, '0'));

test('every day from 1900 to 2200 is read back as written, with its hyphens or without', () => {
  assert.equal(days.length, 109_938);
  for (const day of days) {
    assert.equal(dayOf(day), day);
    assert.equal(dayOf(day.replaceAll('-', '')), day);
  }
});

test('of all that is written like a day of those years, only a day of the calendar is read', () => {
  const known = new Set(days);
  const two = (part: number) => String(part).padStart(2, '0');
  for (let year = 1900; year <= 2200; year += 1)
    for (let month = 0; month <= 13; month += 1)
      for (let day = 0; day <= 32; day += 1) {
        const text = `${year}-${two(month)}-${two(day)}`;
        if (dayOf(text) !== (known.has(text) ? text : 'calendar')) assert.fail(`${text}: ${dayOf(text)}`);
      }
});

test('whatever is typed is refused, or is the day that its own digits say', () => {
  const alike = fc.string({ unit: fc.constantFrom(...'0123456789-/. T:'), maxLength: 12 });
  fc.assert(
    fc.property(
      fc.oneof(
        alike,
        fc.string(),
        fc.tuple(one, fc.string()).map(([day, more]) => day + more),
      ),
      (text) => {
        const read = readTypedDay(text);
        if (!read.ok) return;
        const digits = text.replaceAll(/[^0-9]/g, '');
        assert.equal(read.day.replaceAll('-', ''), digits);
        assert.equal(new Date(`${read.day}T00:00:00Z`).toISOString().slice(0, 10), read.day);
      },
    ),
    { seed: 7, numRuns: 5000 },
  );
});

test('the edges of the calendar: leap years, the thirtieth of February, a month and a day of nought, years before the calendar', () => {
  assert.equal(dayOf('2024-02-29'), '2024-02-29');
  assert.equal(dayOf('2000-02-29'), '2000-02-29');
  const none = ['2026-02-29', '1900-02-29', '2100-02-29', '2026-02-30', '20260230', '2026-04-31', '2026-13-01'];
  for (const text of [...none, '2026-00-10', '2026-10-00', '1582-12-31', '0026-11-25'])
    assert.equal(dayOf(text), 'calendar', text);
  assert.equal(dayOf('1583-01-01'), '1583-01-01');
});

test('a day that could be another one, or is not whole yet, is never guessed', () => {
  const refused = [
    '11/25/2026',
    '25.11.2026',
    '25-11-2026',
    '2026/11/25',
    '26-11-25',
    '261125',
    '2026-11',
    '2026-11-2',
  ];
  for (const text of [...refused, '2026-1-25', '202611-25', '2026-1125', '25 November 2026', '2026-11-25 14:30'])
    assert.equal(dayOf(text), 'shape', text);
  for (const text of ['', ' ', '\t\u00a0']) assert.equal(dayOf(text), 'empty');
});

test('blanks round a day, the hyphens of a printed page and what is copied along unseen change nothing', () => {
  for (const text of [
    ' 2026-11-25\n',
    '2026\u201111\u201125',
    '2026\u201311\u201325',
    '2026\u221211\u221225',
    '2026-\u206011-\u206025\u200b',
  ])
    assert.equal(dayOf(text), '2026-11-25');
});

test('a time is read back as written, whatever form it has; seconds of nought fall away', () => {
  const clock = fc.tuple(two(0, 23), two(0, 59), two(0, 59));
  const form = fc.record({
    between: fc.constantFrom('T', ' ', '  ', 't'),
    isBasic: fc.boolean(),
    isLong: fc.boolean(),
  });
  fc.assert(
    fc.property(one, clock, form, (day, parts, { between, isBasic, isLong }) => {
      const whole = `${day} ${parts.slice(0, isLong ? 3 : 2).join(':')}`;
      const typed = isBasic ? whole.replaceAll(/[-:]/g, '') : whole;
      const expected = isLong && parts[2] === '00' ? whole.slice(0, -3) : whole;
      assert.equal(timeOf(typed.replace(' ', between)), expected);
    }),
    { seed: 7, numRuns: 2000 },
  );
});

test('a clock shows 00:00 to 23:59:59 and nothing else', () => {
  assert.equal(timeOf('2026-11-25 00:00'), '2026-11-25 00:00');
  assert.equal(timeOf('2026-11-25 23:59:59'), '2026-11-25 23:59:59');
  for (const clock of ['24:00', '23:60', '23:59:60', '99:99', '2400'])
    assert.equal(timeOf(`2026-11-25 ${clock}`), 'clock', clock);
  assert.equal(timeOf('2026-02-30 14:30'), 'calendar');
  assert.equal(timeOf('11/25/2026 14:30'), 'shape');
  const half = ['2026-11-25', '2026-11-25 ', '2026-11-25 14', '2026-11-25 14:3', '2026-11-25 9:30', '2026-11-25 143'];
  for (const text of [...half, '2026-11-25T14:30Z', '2026-11-25 14:30+01:00', '2026-11-25 02:30 pm', '202611251430'])
    assert.equal(timeOf(text), 'shape', text);
  assert.equal(timeOf(' '), 'empty');
});

test('the day after every day from 1900 to 2200 is the next one, and the day before it the last', () => {
  for (const [at, day] of days.entries()) {
    const next = days[at + 1];
    if (next === undefined) continue;
    assert.equal(dayAfter(day, 1), next);
    assert.equal(dayAfter(next, -1), day);
  }
});

test('beyond the calendar, and from what is no day, there is no day after', () => {
  assert.equal(dayAfter('9999-12-31', 1), null);
  assert.equal(dayAfter('1583-01-01', -1), null);
  assert.equal(dayAfter('2026-02-30', 1), null);
  assert.equal(dayAfter('2026-11-25', Number.NaN), null);
});
