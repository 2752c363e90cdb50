import assert from 'node:assert/strict';
import { test } from 'node:test';
import { type Limit, type Quantity, rulebook, specificationFor } from '../../src/chain/index.ts';
import { cellNumber, cellSource } from '../../src/chain/rulebook.ts';
import { everyRow } from './every-row.ts';
import { limitOf } from './limit-of.ts';

/** What a quantity of the file becomes as a limit. */
const limitNames: Readonly<Record<string, Quantity>> = {
  nominalSize: 'diameter',
  diameterTolerance: 'diameter',
  weldDiameterMax: 'weldDiameter',
  pitch: 'pitch',
  pitchUpper: 'pitch',
  pitchLower: 'pitch',
  innerWidthMin: 'innerWidth',
  outerWidthMax: 'outerWidth',
  outerLengthMax: 'outerLength',
  outerLengthMin: 'outerLength',
  gaugeLength11: 'lengthOverLinks',
  gaugeLength11Upper: 'lengthOverLinks',
  gaugeLength11Lower: 'lengthOverLinks',
  chainLength: 'lengthOverLinks',
  massPerMetre: 'massPerMetre',
  workingLoadLimit: 'workingLoadLimit',
  stressAtWll: 'workingLoadLimit',
  proofForce: 'proofForce',
  breakingForceMin: 'breakingForce',
  elongationMin: 'elongation',
  bendDeflectionMin: 'bendDeflection',
};

const lookedUp = everyRow();

test('DIN 766, 10 mm: the outside width is in conflict, with the other value and who gives it', () => {
  const limit = limitOf(specificationFor({ standard: 'DIN 766', size_mm: 10 }), 'outerWidth');
  const table = rulebook.standards.find(({ id }) => id === 'DIN 766')?.tables.find(({ id }) => id === 'dimensions');
  const others = table?.alternatives?.filter(({ d, column }) => d === 10 && column === 'outerWidth') ?? [];
  assert.ok(others.length > 0);
  assert.ok(limit.provenance.flags.includes('conflict'));
  assert.deepEqual(
    limit.provenance.alternatives.map(({ value }) => value),
    others.map(({ value }) => value),
  );
  for (const { citation } of limit.provenance.alternatives) assert.match(citation, /DIN 766/);
});

test('every value that has alternatives in the file is in conflict, and no other table value is', () => {
  let conflicts = 0;
  for (const { table, row, specification } of lookedUp) {
    for (const [name, column] of Object.entries(table.columns)) {
      const quantity = limitNames[column.quantity];
      const isMain = column.quantity !== 'nominalSize' && cellNumber(row, name) !== null;
      const limit = specification.limits.find((candidate) => candidate.quantity === quantity);
      if (!isMain || limit === undefined || isOtherGrade(column.grade, specification.grade)) continue;
      const others = (table.alternatives ?? []).filter(
        (other) => other.column === name && other[keyOf(table.key)] === row[table.key],
      );
      if (others.length > 0) {
        assert.ok(limit.provenance.flags.includes('conflict'), `${specification.title}: ${limit.statement}`);
        assert.ok(limit.provenance.alternatives.length >= others.length);
        conflicts += 1;
      }
    }
    for (const limit of specification.limits) {
      assert.equal(limit.provenance.flags.includes('conflict'), limit.provenance.alternatives.length > 0);
    }
  }
  assert.ok(conflicts > 30, `${conflicts} conflicts`);
});

test('material diameters of US chain are from memory, but for the grade 80 sizes seen on a page', () => {
  const recalled = limitOf(specificationFor({ standard: 'astm-a413', grade: '30', tradeSize: '3/8' }), 'diameter');
  assert.ok(recalled.provenance.flags.includes('memory'));
  assert.equal(recalled.lower, null);
  const seen = limitOf(specificationFor({ standard: 'astm-a391', tradeSize: '3/8' }), 'diameter');
  assert.ok(!seen.provenance.flags.includes('memory'));
});

test('UR W22: R3 proof is in conflict with an older coefficient, five links are from memory, R5 is derived', () => {
  const r3 = specificationFor({ standard: 'W22', grade: 'R3 studless', size_mm: 50 });
  assert.ok(limitOf(r3, 'proofForce').provenance.flags.includes('conflict'));
  assert.ok(
    (limitOf(r3, 'proofForce').provenance.alternatives[0]?.value ?? 0) < (limitOf(r3, 'proofForce').lower ?? 0),
  );
  assert.deepEqual(limitOf(r3, 'lengthOverLinks').provenance.flags, ['memory']);
  const r5 = specificationFor({ standard: 'W22', grade: 'R5 stud', size_mm: 50 });
  assert.ok(limitOf(r5, 'breakingForce').provenance.flags.includes('derived'));
});

test('probable misprints stay marked, with the reason', () => {
  let found = 0;
  for (const { table, row, specification } of lookedUp) {
    for (const cells of table.suspect ?? []) {
      if (cells.trade !== row.trade) continue;
      for (const name of cells.columns) {
        const column = table.columns[name];
        if (column === undefined || isOtherGrade(column.grade, specification.grade)) continue;
        const limit = specification.limits.find(({ quantity }) => quantity === limitNames[column.quantity]);
        assert.ok(limit, `${specification.title} ${name}`);
        assert.ok(limit.provenance.flags.includes('suspect'), `${specification.title} ${name}`);
        assert.ok(limit.provenance.note?.includes(cells.why));
        found += 1;
      }
    }
  }
  assert.ok(found >= 9, `${found} suspect cells`);
});

test('a size that is perhaps none of the standard says so on its dimensions', () => {
  const limit = limitOf(specificationFor({ standard: 'DIN 766', size_mm: 12 }), 'pitch');
  assert.match(limit.provenance.note ?? '', /probably not a size/);
});

test('a second page counts only for the rows it is listed for', () => {
  const wll = (size_mm: number) => limitOf(specificationFor({ standard: 'EN 818-3', size_mm }), 'workingLoadLimit');
  assert.equal(wll(8).provenance.crossChecked, true);
  assert.equal(wll(7).provenance.crossChecked, false);
});

test('every limit that rests on memory is marked, and no other; the list is printed', (t) => {
  const marked = new Map<string, Set<string>>();
  for (const { standard, specification } of lookedUp) {
    for (const limit of specification.limits) {
      const isMemory = citesMemory(limit);
      assert.equal(limit.provenance.flags.includes('memory'), isMemory, `${specification.title}: ${limit.statement}`);
      if (!isMemory) continue;
      const key = `${standard.id}, ${limit.quantity}`;
      marked.set(key, (marked.get(key) ?? new Set()).add(`${specification.nominalSize_mm}`));
    }
  }
  for (const [key, sizes] of [...marked].sort()) t.diagnostic(`memory: ${key} (${[...sizes].join(', ')} mm)`);
  assert.deepEqual([...marked.keys()].sort(), [...recalledInFile()].sort());
});

/** Standard and quantity of everything the file gives from memory, read from the file alone. */
function recalledInFile(): ReadonlySet<string> {
  const found = new Set<string>();
  for (const standard of rulebook.standards) {
    const add = (quantity: string) => {
      const name = limitNames[quantity];
      if (name !== undefined) found.add(`${standard.id}, ${name}`);
    };
    for (const rule of standard.rules) {
      const sources = [...rule.sources, ...(rule.tolerance?.sources ?? [])];
      if (sources.includes('memory')) add(rule.quantity);
      // The tolerance rule of UR W18 speaks of all other dimensions too.
      if (sources.includes('memory') && JSON.stringify(rule.value ?? {}).includes('otherPct')) {
        add('pitch');
        add('outerWidthMax');
      }
    }
    for (const table of standard.tables) {
      for (const [name, column] of Object.entries(table.columns)) {
        const isRecalled = table.rows.some(
          (row) => (cellSource(row, name) ?? column.sources?.[0]) === 'memory' && cellNumber(row, name) !== null,
        );
        if (isRecalled) add(column.quantity);
      }
    }
  }
  return found;
}

function citesMemory(limit: Limit): boolean {
  return limit.provenance.citations.some(({ id, kind }) => id === 'memory' || kind === 'memory');
}

function isOtherGrade(columnGrade: string | undefined, grade: string | null): boolean {
  return columnGrade !== undefined && columnGrade !== grade?.split(' ')[0];
}

function keyOf(key: string): 'd' | 'trade' {
  return key === 'trade' ? 'trade' : 'd';
}
