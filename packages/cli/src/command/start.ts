import { serveRecord } from '@provinghouse/server';
import { type Command, positive, text } from '../command.ts';
import { exitCode } from '../exit.ts';
import { progressBar } from '../progress.ts';
import { stopped } from '../stopped.ts';

export const start: Command = {
  name: 'start',
  usage: 'start [--port N] [--host ADDRESS] [--demo] [--practice [--practice-speed X]]',
  summary: 'Open the record in the browser: prints the address and serves until stopped.',
  options: {
    port: { type: 'string', help: 'port to listen on; 4380 when left out' },
    host: { type: 'string', help: 'address to listen on; 127.0.0.1 when left out, which only this machine reaches' },
    demo: { type: 'boolean', help: 'bring the demo campaign in first when the record is empty' },
    practice: { type: 'boolean', help: 'stand a practice rig on the bench, with a campaign of its own' },
    'practice-speed': {
      type: 'string',
      help: 'simulated seconds for each real one at the practice rig; 1 when left out',
    },
  },
  example: 'provinghouse start --demo',
  async run({ values, terminal }) {
    const served = await serveRecord({
      port: positive(values, 'port') ?? 4380,
      host: text(values, 'host') ?? '127.0.0.1',
      demo: values.demo === true,
      ...(values.practice === true ? { practice: { speed: positive(values, 'practice-speed') ?? 1 } } : {}),
      progress: progressBar(terminal),
    });
    for (const note of served.notes) terminal.out.write(`${note}\n`);
    terminal.out.write(`Provinghouse is open at ${served.address}\nStop it with Ctrl+C.\n`);
    await stopped();
    await served.close();
    return exitCode.done;
  },
};
