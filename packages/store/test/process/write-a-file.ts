/** Writes a long file into the record of a home folder, says when it begins, and ends. */
import { openStore, writeBlob } from '../../src/index.ts';
import { longBytes } from '../long-bytes.ts';

const [, , home = ''] = process.argv;
const store = await openStore(home);
process.stdout.write('begun\n');
await writeBlob(store.db, longBytes());
await store.close();
