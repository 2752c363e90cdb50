import { writeTemplate } from '@provinghouse/service';
import { type Command, only } from '../command.ts';
import { exitCode } from '../exit.ts';
import { progressBar } from '../progress.ts';

export const template: Command = {
  name: 'template',
  usage: 'template DIR [--json]',
  summary: 'Write an empty data package with two example rows in each table, to fill in with a spreadsheet.',
  options: { json: { type: 'boolean', help: 'print what was written' } },
  example: 'provinghouse template my-campaign',
  async run({ positionals, values, terminal }) {
    const dir = only(positionals, 'a folder');
    const done = await writeTemplate({ dir }, { progress: progressBar(terminal) });
    terminal.out.write(
      values.json
        ? `${JSON.stringify(done)}\n`
        : `${dir} holds a data package with two example rows in each table.\nReplace them with your own, then: provinghouse bring-in ${dir}\n`,
    );
    return exitCode.done;
  },
};
