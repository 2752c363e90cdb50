import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { openRecord } from '../../../src/index.ts';
import { bringInPractice, openRigDesks } from '../../../src/pull/index.ts';
import { armInput, scriptedRig } from '../bench.ts';

/** Pulls in the record of the folder given and kills itself in mid-pull, once a thousand samples were shown. */
const [home = ''] = process.argv.slice(2);
const rig = 'PRACTICE-RIG';
const { effects } = await openRecord({ home });
await bringInPractice(effects);
const desks = openRigDesks({ rigs: [scriptedRig(rig)], home }, effects);
await desks.follow(rig, {
  send: (message) => {
    if (message.kind !== 'samples' || message.received <= 1000) return;
    writeFileSync(join(home, 'shown'), String(message.received));
    process.kill(process.pid, 'SIGKILL');
  },
  backlog: () => 0,
  drop: () => undefined,
});
await desks.arm(rig, armInput('PRACTICE-8-1'));
await desks.start(rig);
