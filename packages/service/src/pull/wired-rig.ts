import type { Source } from '@provinghouse/rig';

/** Sources opened for one pull, and how they are let go. */
export interface OpenedWires {
  readonly sources: readonly Source[];
  /** Told when the recording has begun: a practice rig begins to pull then. Absent at a real rig, which no program starts. */
  begin?(): void;
  /** Lets go of everything; harmless twice. */
  close(): Promise<void>;
}

/** A rig whose readings come in over wires. */
export interface WiredRig {
  /** As the campaigns name it. */
  readonly rig: string;
  /** Where its readings come from, for a screen. */
  readonly describe: string;
  readonly isPractice: boolean;
  /** Opens the wires for a pull of a piece; each pull opens them anew. */
  open(piece: {
    readonly piece: string;
    readonly nominalSize_mm: number;
    readonly links: number;
  }): Promise<OpenedWires>;
}
