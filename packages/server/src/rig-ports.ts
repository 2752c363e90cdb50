import type { ArmInput, GoOnInput, LiveMessage, RigDesk, WireTestMessage } from '@provinghouse/contract';

/** Somebody who follows a pull over a wire. */
export interface RigViewer {
  send(message: LiveMessage): void;
  /** Bytes sent and not yet taken. */
  backlog(): number;
  /** The viewer is too far behind and is given up. */
  drop(): void;
}

/** Somebody who looks on while wires are tested. */
export interface WireTestViewer {
  send(message: WireTestMessage): void;
  /** Bytes sent and not yet taken. */
  backlog(): number;
  /** There is nothing more to come. */
  drop(): void;
}

/** What the server can do at a rig. Null means: there is no such rig here. A refusal is an InputError with a code of `pull/`. */
export interface RigPorts {
  rigs(): Promise<readonly RigDesk[]>;
  desk(rig: string): Promise<RigDesk | null>;
  arm(rig: string, input: ArmInput): Promise<RigDesk | null>;
  start(rig: string): Promise<RigDesk | null>;
  mark(rig: string, words: string): Promise<RigDesk | null>;
  /** Ends the recording, or gives up a pull that is armed. The machine is not touched. */
  stop(rig: string): Promise<RigDesk | null>;
  /** Seals a recording that waits as it is, with its gap marked. */
  recover(rig: string, spool: string): Promise<RigDesk | null>;
  /** Goes on with a recording that waits, after the checklist. */
  goOn(rig: string, input: GoOnInput): Promise<RigDesk | null>;
  /** Tests the wires of a rig for as long as somebody looks on; gives the way out. */
  testWires(rig: string, viewer: WireTestViewer): Promise<(() => void) | null>;
  /** Joins the viewers of a rig; gives the way out. */
  follow(rig: string, viewer: RigViewer): Promise<(() => void) | null>;
}
