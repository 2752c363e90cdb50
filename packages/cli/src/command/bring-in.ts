import { bringIn as bringInPackage } from '@provinghouse/service';
import { type Command, only, text } from '../command.ts';
import { exitCode } from '../exit.ts';
import { wrapped } from '../layout.ts';
import { withRecord } from '../record.ts';

export const bringIn: Command = {
  name: 'bring-in',
  usage: 'bring-in DIR|ZIP [--who NAME] [--why REASON] [--json]',
  summary: 'Bring a campaign in from a data package: all of it or, with every fault listed, nothing.',
  options: {
    who: { type: 'string', help: 'who brings it in, for the ledger; the user of this machine when left out' },
    why: { type: 'string', help: 'why, for the ledger' },
    json: { type: 'boolean', help: 'print {"campaign": code, ...}' },
  },
  example: 'provinghouse bring-in examples/sallow-reach',
  async run({ positionals, values, terminal }) {
    const path = only(positionals, 'a folder or ZIP file');
    const why = text(values, 'why') ?? `brought in from ${path}`;
    const done = await withRecord(terminal, (effects) =>
      bringInPackage({ path, who: text(values, 'who') ?? effects.who, why }, effects),
    );
    if (values.json) terminal.out.write(`${JSON.stringify(done)}\n`);
    else {
      const rows = Object.values(done.rows).reduce((sum, count) => sum + count, 0);
      terminal.out.write(
        done.alreadyHeld
          ? `Campaign ${done.campaign} is already in the record, the same to the last row. Nothing was written.\n`
          : `Campaign ${done.campaign} is in the record: ${rows} rows and ${done.files} files.\n${done.notes.map((note) => `${wrapped(note, '  ')}\n`).join('')}Next: provinghouse judge ${done.campaign}\n`,
      );
    }
    return exitCode.done;
  },
};
