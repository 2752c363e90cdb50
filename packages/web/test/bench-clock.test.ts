import assert from 'node:assert/strict';
import { afterEach, test } from 'node:test';
import { tables } from '@provinghouse/contract';
import fc from 'fast-check';
import { instantOf, minuteOf, readDay, readTime, timeText } from '../src/lib/entry/bench-clock.ts';
import { readTyped, typedText } from '../src/lib/entry/cell-text.ts';

const zoneBefore = process.env.TZ;
afterEach(() => {
  if (zoneBefore === undefined) delete process.env.TZ;
  else process.env.TZ = zoneBefore;
});

/** Puts the bench into a time zone of the IANA data base. */
function benchIn(zone: string): void {
  process.env.TZ = zone;
}

const faultOf = (typed: string) => {
  const read = readTime(typed);
  return read.ok ? null : read.fault;
};

test('what is typed is the clock of the bench, what is kept is the instant in UTC', () => {
  benchIn('Europe/Berlin');
  assert.equal(instantOf('2026-11-25 14:30'), '2026-11-25T13:30:00Z');
  assert.equal(instantOf('2026-07-25T00:30'), '2026-07-24T22:30:00Z');
  benchIn('Asia/Kathmandu');
  assert.equal(instantOf('20261125 1430'), '2026-11-25T08:45:00Z');
  assert.equal(timeText('2026-11-25T08:45:00Z'), '2026-11-25 14:30');
});

test('an instant survives the field it is shown in, wherever the bench stands, but for the hour a clock shows twice', () => {
  const zones = ['UTC', 'Europe/Berlin', 'America/St_Johns', 'Asia/Kathmandu', 'Pacific/Apia', 'Australia/Lord_Howe'];
  const seconds = fc.integer({ min: Date.UTC(1980, 0, 1) / 1000, max: Date.UTC(2099, 0, 1) / 1000 });
  for (const zone of zones) {
    benchIn(zone);
    fc.assert(
      fc.property(seconds, (second) => {
        const instant = new Date(second * 1000).toISOString().replace('.000Z', 'Z');
        const back = instantOf(timeText(instant));
        if (back === instant) return;
        assert.ok(back !== null && back < instant, `${instant} in ${zone} came back as ${back}`);
        assert.equal(timeText(back), timeText(instant));
      }),
      { seed: 7, numRuns: 300 },
    );
  }
});

test('a time that the clock leaves out when summer time begins is a fault and no instant', () => {
  benchIn('Europe/Berlin');
  assert.equal(instantOf('2026-03-29 01:59'), '2026-03-29T00:59:00Z');
  for (const typed of ['2026-03-29 02:00', '2026-03-29 02:30', '2026-03-29 02:59:59']) {
    assert.equal(instantOf(typed), null);
    assert.match(faultOf(typed) ?? '', /left out by the clock of this bench/);
  }
  assert.equal(instantOf('2026-03-29 03:00'), '2026-03-29T01:00:00Z');
  benchIn('UTC');
  assert.equal(instantOf('2026-03-29 02:30'), '2026-03-29T02:30:00Z');
});

test('a time that the clock shows twice when summer time ends is its first showing', () => {
  benchIn('Europe/Berlin');
  assert.equal(instantOf('2026-10-25 02:30'), '2026-10-25T00:30:00Z');
  assert.equal(timeText('2026-10-25T00:30:00Z'), timeText('2026-10-25T01:30:00Z'));
  assert.equal(instantOf('2026-10-25 03:00'), '2026-10-25T02:00:00Z');
});

test('seconds are shown where there are any, and a moment at the bench has none', () => {
  benchIn('UTC');
  assert.equal(timeText('2026-11-25T14:30:05.250Z'), '2026-11-25 14:30:05');
  assert.equal(instantOf('2026-11-25 14:30:05'), '2026-11-25T14:30:05Z');
  assert.equal(minuteOf(new Date('2026-11-25T14:30:59.999Z')), '2026-11-25T14:30:00Z');
  assert.deepEqual([timeText(null), timeText(''), timeText('soon')], ['', '', '']);
});

test('a fault says how it is written, and an unfinished day or time is no value', () => {
  const refused = ['11/25/2026', '25.11.2026', '2026-11-2', ''];
  for (const typed of refused) {
    const read = readDay(typed);
    assert.match(read.ok ? '' : read.fault, /Write it as 2026-\u206011-\u206025$/, typed);
    assert.match(faultOf(typed) ?? '', /Write it as 2026-\u206011-\u206025.14:30$/);
  }
  for (const typed of ['2026-11-25 24:00', '2026-11-25 23:60']) assert.match(faultOf(typed) ?? '', /00:00 to 23:59/);
  assert.match(faultOf('2026-02-30 10:00') ?? '', /calendar/);
});

test('what a fault tells to write is read when it is copied', () => {
  const cure = (fault: string) => fault.slice(fault.indexOf('2026'));
  const day = readDay('25.11.2026');
  assert.ok(!day.ok);
  assert.deepEqual(readDay(cure(day.fault)), { ok: true, value: '2026-11-25', shown: '2026-11-25' });
  const shown = readTime(cure(faultOf('25.11.2026 14:30') ?? ''));
  assert.ok(shown.ok && shown.shown === '2026-11-25 14:30');
});

test('a column of days or times is typed as its field is, and left empty where it may be', () => {
  benchIn('Europe/Berlin');
  const { moved_at, due_back_on } = tables.custody.fields;
  assert.deepEqual(readTyped(due_back_on, ' 20261125 '), { ok: true, value: '2026-11-25', shown: '2026-11-25' });
  assert.deepEqual(readTyped(due_back_on, ' '), { ok: true, value: null });
  assert.equal(readTyped(due_back_on, '25.11.2026').ok, false);
  const read = readTyped(moved_at, '2026-11-25 14:30');
  assert.ok(read.ok && read.value === '2026-11-25T13:30:00Z');
  assert.equal(readTyped(moved_at, '').ok, false);
  assert.equal(typedText(moved_at, '2026-11-25T13:30:00Z'), '2026-11-25 14:30');
  assert.equal(typedText(due_back_on, '2026-11-25'), '2026-11-25');
  assert.equal(typedText(due_back_on, null), '');
});
