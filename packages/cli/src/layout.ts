/** Columns of text: numbers to the right, words to the left; two blanks between. */
export function columns(rows: readonly (readonly string[])[], right: readonly number[] = []): string {
  const widths = rows.reduce<number[]>(
    (all, row) => row.map((cell, index) => Math.max(all[index] ?? 0, cell.length)),
    [],
  );
  return rows
    .map((row) =>
      row
        .map((cell, index) =>
          right.includes(index) ? cell.padStart(widths[index] ?? 0) : cell.padEnd(widths[index] ?? 0),
        )
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

/** A number for a person: five significant figures; a dash where there is none. */
export function shown(value: number | null): string {
  if (value === null) return '-';
  return Math.abs(value) >= 1e5 ? value.toFixed(0) : String(Number(value.toPrecision(5)));
}

/** Breaks a paragraph into lines no longer than `width`, each after `indent`. */
export function wrapped(paragraph: string, indent = '', width = 96): string {
  const lines: string[] = [];
  let line = '';
  for (const word of paragraph.split(/[ \t\n]+/)) {
    if (line !== '' && indent.length + line.length + 1 + word.length > width) {
      lines.push(indent + line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, indent + line].join('\n');
}
