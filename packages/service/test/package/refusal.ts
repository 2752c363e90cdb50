import assert from 'node:assert/strict';
import { test } from 'node:test';
import { campaignCodes } from '@provinghouse/store';
import { bringIn } from '../../src/package/index.ts';
import { type Changes, faultsOf, handWritten, laboratory, placeOf, temporaryFolder, writeFolder } from './workshop.ts';

/** A package with one thing wrong, and the one fault that must be told for it; `others` where more follow from it. */
export type Refusal = readonly [wrong: string, change: Changes, place: string, fault: RegExp, others?: 'others'];

/** Declares that each is refused for its fault. */
export function testRefusals(refusals: readonly Refusal[]): void {
  for (const [wrong, change, place, fault, others] of refusals) {
    test(`a package with ${wrong} is refused, with the place and the cure, and nothing of it is kept`, async (t) => {
      const { effects } = await laboratory(t);
      const path = writeFolder(temporaryFolder(t), handWritten(change));
      const faults = await faultsOf(path);
      const found = faults.find((one) => place.startsWith(`${one.file} `) && fault.test(one.fault));
      assert.equal(found && placeOf(found), place, JSON.stringify(faults, null, 1));
      if (others === undefined) assert.equal(faults.length, 1, JSON.stringify(faults, null, 1));
      await assert.rejects(bringIn({ path, who: 'x', why: 'y' }, effects), { code: 'package/faults' });
      assert.deepEqual(await campaignCodes(effects.store), []);
    });
  }
}
