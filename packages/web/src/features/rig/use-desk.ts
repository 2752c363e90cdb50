import type { RigDesk } from '@provinghouse/contract';
import { useCallback, useState } from 'react';
import { type Fault, readRecord } from '../../lib/request.ts';
import { rigAddress } from '../../lib/requests/rig.ts';

export interface DeskState {
  readonly desk: RigDesk | null;
  readonly fault: Fault | null;
  /** Asks for it anew. */
  readonly again: () => void;
  readonly set: (desk: RigDesk) => void;
}

/** What stands on a rig: asked for when something turns, not on a beat. */
export function useDesk(rig: string): DeskState {
  const [desk, setDesk] = useState<RigDesk | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const again = useCallback(() => {
    void readRecord<RigDesk>(rigAddress(rig)).then((reply) => {
      if (reply.ok) setDesk(reply.record);
      setFault(reply.ok ? null : reply.fault);
    });
  }, [rig]);
  return { desk, fault, again, set: setDesk };
}
