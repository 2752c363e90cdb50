// The thread in which a pull is sealed into the record. Ended from outside it leaves the record as it was: what it writes is one transaction.
import { openStore } from '@provinghouse/store';
import { answerInThread } from '../thread-answer.ts';
import type { SealJob } from './seal-in-thread.ts';
import { type SealedPull, sealPull } from './seal-pull.ts';

await answerInThread<SealJob, SealedPull>(async ({ pull, home, who, now }, progress) => {
  const store = await openStore(home);
  try {
    return await sealPull(pull, { store: store.db, now: () => new Date(now), who, progress });
  } finally {
    await store.close();
  }
});
