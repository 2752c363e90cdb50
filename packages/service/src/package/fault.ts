import { InputError } from '@provinghouse/core';

/** One thing wrong with a package. Rows count as a spreadsheet shows them: the header is row 1. */
export interface PackageFault {
  /** Path in the package; null for the package as a whole. */
  readonly file: string | null;
  readonly row: number | null;
  readonly column: string | null;
  /** What is there and what would be right. */
  readonly fault: string;
}

/** Faults named in the message itself; `context.faults` holds all of them. */
const namedFaults = 200;

/** A fault of a file as a whole. */
export function fileFault(file: string | null, fault: string): PackageFault {
  return { file, row: null, column: null, fault };
}

/** One fault in one line: place, then what would be right. */
export function faultLine({ file, row, column, fault }: PackageFault): string {
  const place = [file, row === null ? null : `row ${row}`, column].filter((part) => part !== null).join(', ');
  return place === '' ? fault : `${place}: ${fault}`;
}

/** The one error for all faults of a package. */
export function faultsError(path: string, faults: readonly PackageFault[]): InputError {
  const lines = faults.slice(0, namedFaults).map((fault) => `  ${faultLine(fault)}`);
  if (faults.length > namedFaults) lines.push(`  and ${faults.length - namedFaults} more`);
  const count = faults.length === 1 ? 'a fault' : `${faults.length} faults`;
  return new InputError(
    'package/faults',
    [`${path}: the package has ${count}; nothing of it was kept`, ...lines].join('\n'),
    {
      path,
      faults,
    },
  );
}
