import { serveRecord } from '@provinghouse/server';
import { type Command, positive, text } from '../command.ts';
import { exitCode } from '../exit.ts';
import { progressBar } from '../progress.ts';

export const start: Command = {
  name: 'start',
  usage: 'start [--port N] [--host ADDRESS] [--demo]',
  summary: 'Open the record in the browser: prints the address and serves until stopped.',
  options: {
    port: { type: 'string', help: 'port to listen on; 4380 when left out' },
    host: { type: 'string', help: 'address to listen on; 127.0.0.1 when left out, which only this machine reaches' },
    demo: { type: 'boolean', help: 'bring the demo campaign in first when the record is empty' },
  },
  example: 'provinghouse start --demo',
  async run({ values, terminal }) {
    const served = await serveRecord({
      port: positive(values, 'port') ?? 4380,
      host: text(values, 'host') ?? '127.0.0.1',
      demo: values.demo === true,
      progress: progressBar(terminal),
    });
    for (const note of served.notes) terminal.out.write(`${note}\n`);
    terminal.out.write(`Provinghouse is open at ${served.address}\nStop it with Ctrl+C.\n`);
    await stopped();
    await served.close();
    return exitCode.done;
  },
};

function stopped(): Promise<void> {
  return new Promise((resolve) => {
    process.once('SIGINT', () => resolve());
    process.once('SIGTERM', () => resolve());
  });
}
