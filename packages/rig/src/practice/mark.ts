/** The word by which everything the practice rig sends can be told from a real pull. */
export const practiceWord = 'PRACTICE';

/** Line that opens each connection, comes again every few seconds of the pull, and closes it. No pattern matches it. */
export function practiceLine(seed: number, more = 'simulated, not a pull of any chain'): string {
  return `# ${practiceWord} seed ${seed}: ${more}`;
}

/** True for a line that says that what comes on this wire is simulated. */
export function isPracticeLine(line: string): boolean {
  return line.startsWith(`# ${practiceWord} `);
}
