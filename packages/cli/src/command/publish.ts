import { publishCampaign } from '@provinghouse/service';
import { type Command, only, text, UsageError } from '../command.ts';
import { exitCode } from '../exit.ts';
import { withRecord } from '../record.ts';

export const publish: Command = {
  name: 'publish',
  usage: 'publish CAMPAIGN --out FILE.pdf [--json]',
  summary: 'Write the report of a campaign as PDF/A.',
  options: {
    out: { type: 'string', help: 'file to write' },
    json: { type: 'boolean', help: 'print {"campaign", "file", "pages", "sha256"}' },
  },
  example: 'provinghouse publish SALLOW-REACH --out sallow-reach.pdf',
  async run({ positionals, values, terminal }) {
    const campaign = only(positionals, 'a campaign');
    const out = text(values, 'out');
    if (out === undefined) throw new UsageError('say where the report goes: --out FILE.pdf');
    const done = await withRecord(terminal, (effects) => publishCampaign({ campaign, out }, effects));
    terminal.out.write(
      values.json
        ? `${JSON.stringify(done)}\n`
        : `${done.file}: ${done.pages} pages, SHA-256 ${done.sha256.slice(0, 16)}...\n`,
    );
    return exitCode.done;
  },
};
