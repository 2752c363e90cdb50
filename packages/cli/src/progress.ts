import type { Terminal } from './command.ts';

/** Draws a bar on the error stream for work that takes longer than a second; silent off a terminal. */
export function progressBar(terminal: Terminal): (label: string, done: number, total: number) => void {
  if (!terminal.bars) return () => undefined;
  const begun = performance.now();
  let drawn = false;
  return (label, done, total) => {
    if (performance.now() - begun < 1000) return;
    const finished = done >= total;
    if (finished && !drawn) return;
    drawn = true;
    const filled = Math.round(24 * Math.min(1, total === 0 ? 1 : done / total));
    terminal.err.write(
      `\r${label} [${'='.repeat(filled)}${' '.repeat(24 - filled)}] ${done} of ${total}${finished ? '\n' : ''}`,
    );
  };
}
