import { isInputError, type OwnStandard, parseOwnStandard } from '@provinghouse/core';
import { fileFault, type PackageFault } from './fault.ts';
import { parseJson } from './listing.ts';

export interface OwnStandards {
  readonly standards: readonly OwnStandard[];
  readonly faults: readonly PackageFault[];
}

/** Reads the own specifications of a package, by path: every file below specifications/ must be one. */
export function readOwnStandards(files: ReadonlyMap<string, Uint8Array>): OwnStandards {
  const standards: OwnStandard[] = [];
  const faults: PackageFault[] = [];
  const paths = [...files.keys()].filter((path) => path.startsWith('specifications/')).sort();
  for (const path of paths) {
    const json = parseJson(files.get(path) ?? new Uint8Array());
    if (json.ok) take(json.value, path, { standards, faults });
    else faults.push(fileFault(path, `${json.fault}; an own specification is a JSON file`));
  }
  return { standards, faults };
}

interface Taken {
  readonly standards: OwnStandard[];
  readonly faults: PackageFault[];
}

function take(value: unknown, path: string, { standards, faults }: Taken): void {
  try {
    standards.push(parseOwnStandard(value, path));
  } catch (error) {
    if (!isInputError(error)) throw error;
    const found = Array.isArray(error.context.faults) ? error.context.faults : [error.message];
    faults.push(...found.map((fault) => fileFault(path, String(fault))));
  }
}
