import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { LiveMessage } from '@provinghouse/contract';
import { audience } from '../../src/pull/audience.ts';

const samples = (received: number): LiveMessage => ({ kind: 'samples', samples: [], received, rejected: 0 });
const mark: LiveMessage = { kind: 'mark', time_s: 1, words: 'bang' };

function viewer(backlog: () => number) {
  const got: LiveMessage[] = [];
  const state = { dropped: false };
  return {
    got,
    state,
    viewer: {
      send: (message: LiveMessage) => void got.push(message),
      backlog,
      drop: () => {
        state.dropped = true;
      },
    },
  };
}

test('a viewer that is behind misses samples, never a mark, and is set on the newest when it has caught up', () => {
  const all = audience();
  let backlog = 0;
  const slow = viewer(() => backlog);
  const quick = viewer(() => 0);
  all.join(slow.viewer, []);
  all.join(quick.viewer, []);
  all.tell(samples(1));
  backlog = 100_000;
  all.tell(samples(2));
  all.tell(samples(3));
  all.tell(mark);
  backlog = 0;
  all.tell(mark);
  all.tell(samples(4));
  const received = slow.got.map((message) => (message.kind === 'samples' ? message.received : message.kind));
  assert.deepEqual(received, [1, 'mark', 3, 'mark', 4]);
  assert.equal(quick.got.length, 6);
  assert.deepEqual(all.left(), { behind: 1, dropped: 0 });
});

test('a viewer that takes nothing at all is given up, and the others are told on', () => {
  const all = audience();
  const dead = viewer(() => 5_000_000);
  const quick = viewer(() => 0);
  all.join(dead.viewer, []);
  all.join(quick.viewer, []);
  all.tell(mark);
  all.tell(mark);
  assert.equal(dead.state.dropped, true);
  assert.equal(dead.got.length, 0);
  assert.equal(quick.got.length, 2);
  assert.equal(all.size(), 1);
});

test('who joins is told the story so far, and who leaves is told nothing more', () => {
  const all = audience();
  const late = viewer(() => 0);
  const leave = all.join(late.viewer, [mark, samples(9)]);
  leave();
  all.tell(mark);
  assert.deepEqual(late.got, [mark, samples(9)]);
});
