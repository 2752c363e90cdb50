/** Brings a campaign into the record of a home folder and stands still, in the middle of the writing, to be killed. */
import { bringInCampaign, openStore } from '../../src/index.ts';
import { sampleCampaign } from '../sample-campaign.ts';

const [, , home = ''] = process.argv;
const { db } = await openStore(home);
await bringInCampaign(db, {
  ...sampleCampaign('HALF', 2000),
  onProgress: (done, total) => {
    if (done < total / 2) return;
    process.stdout.write('half\n');
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0);
  },
});
