/** Writes a long file into the record of a home folder and stands still, in the middle of it, to be killed. */
import { openStore, writeBlob } from '../../src/index.ts';
import { longBytes } from '../long-bytes.ts';

const [, , home = ''] = process.argv;
const { db } = await openStore(home);
const look = setInterval(async () => {
  const parts = await db.selectFrom('blob_part').select('place').execute();
  if (parts.length < 2) return;
  process.stdout.write('half\n');
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0);
}, 1);
await writeBlob(db, longBytes());
clearInterval(look);
