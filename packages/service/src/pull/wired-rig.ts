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
  /** Force its fixture must not see, where one is stated. */
  readonly fixtureLimit_kN?: number | null;
  /** Fall from the maximum, as a share of it, that ends a pull although nothing parted, where one is agreed. */
  readonly agreedDrop?: number | null;
  /**
   * Opens the wires for a pull of a piece; each pull opens them anew.
   * @param from_s time of the last sample of a pull that is gone on with. A real rig stands where it stands; a simulated one is taken there
   */
  open(
    piece: {
      readonly piece: string;
      readonly nominalSize_mm: number;
      readonly links: number;
    },
    from_s?: number,
  ): Promise<OpenedWires>;
  /** Opens the wires to be tested before any pull, where that is done otherwise than for a pull. */
  openForTest?(): Promise<OpenedWires>;
}
