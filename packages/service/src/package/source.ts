import type { PackageFault } from './fault.ts';

/** A folder or a ZIP, opened: what is in it, and its bytes on demand. */
export interface PackageSource {
  /** Paths of the files, in Unicode normal form C (systems differ in how they write an umlaut). */
  readonly paths: ReadonlySet<string>;
  /** What is wrong with the folder or ZIP as such. */
  readonly faults: readonly PackageFault[];
  /** The bytes of one of the paths. Throws {@link SourceFault} where they cannot or must not be read. */
  read(path: string): Promise<Buffer>;
  close(): void;
}

/** One file could not be read; the others still may. */
export class SourceFault extends Error {
  readonly fault: PackageFault;
  /** True where reading on would be unwise. */
  readonly final: boolean;

  constructor(fault: PackageFault, final = false) {
    super(fault.fault);
    this.name = 'SourceFault';
    this.fault = fault;
    this.final = final;
  }
}
