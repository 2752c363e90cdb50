import assert from 'node:assert/strict';
import { test } from 'node:test';
import { adherenceShares_pct, adherenceWords } from '@provinghouse/core';
import { drawnShare_pct, flakes } from '../src/features/zinc/flake-mesh.ts';

test('what is drawn bare at each grade lies inside the share that the grade stands for', () => {
  adherenceShares_pct.forEach(({ least, below }, grade) => {
    const share = drawnShare_pct(grade);
    if (below === 0) assert.equal(share, 0, `grade ${grade}`);
    else assert.ok(share > least && share < below, `${adherenceWords[grade]}: ${share} %`);
  });
});

test('no patch is drawn twice', () => {
  for (const grade of adherenceWords.keys()) {
    const patches = flakes(grade).map((patch) => JSON.stringify(patch));
    assert.equal(new Set(patches).size, patches.length);
  }
});
