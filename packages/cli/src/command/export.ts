import { exportPackage } from '@provinghouse/service';
import { type Command, only, text, UsageError } from '../command.ts';
import { exitCode } from '../exit.ts';
import { withRecord } from '../record.ts';

export const exportCampaign: Command = {
  name: 'export',
  usage: 'export CAMPAIGN --out FILE.zip [--json]',
  summary: 'Write a campaign as a data package that anybody can bring in, open and re-derive.',
  options: {
    out: { type: 'string', help: 'file to write' },
    json: { type: 'boolean', help: 'print what was written' },
  },
  example: 'provinghouse export SALLOW-REACH --out sallow-reach.zip',
  async run({ positionals, values, terminal }) {
    const campaign = only(positionals, 'a campaign');
    const out = text(values, 'out');
    if (out === undefined) throw new UsageError('say where the package goes: --out FILE.zip');
    const done = await withRecord(terminal, (effects) => exportPackage({ campaign, out }, effects));
    terminal.out.write(values.json ? `${JSON.stringify(done)}\n` : `Campaign ${campaign} written to ${out}.\n`);
    return exitCode.done;
  },
};
