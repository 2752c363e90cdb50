/** Opens the record of a home folder, says how many campaigns it holds, and ends. */
import { campaignCodes, openStore } from '../../src/index.ts';

const [, , home = ''] = process.argv;
const store = await openStore(home);
process.stdout.write(`${(await campaignCodes(store.db)).length}\n`);
await store.close();
