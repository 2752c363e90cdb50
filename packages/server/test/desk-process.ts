import { serveRecord } from '../src/serve-record.ts';

/** A desk in a process of its own, to be killed: serves the record of PROVINGHOUSE_HOME and says its address on its output. */
const { address } = await serveRecord({ port: 0, host: '127.0.0.1', demo: false, progress: () => undefined });
process.stdout.write(`${address}\n`);
