import { benchTrace } from './trace.ts';

await benchTrace();
