import { benchJudge } from './judge.ts';
import { benchTrace } from './trace.ts';
import { benchWeakestLink } from './weakest-link.ts';

await benchTrace();
await benchWeakestLink();
await benchJudge();
