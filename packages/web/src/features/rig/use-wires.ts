import type { WireTestMessage } from '@provinghouse/contract';
import { useCallback, useEffect, useState } from 'react';
import { rigAddress } from '../../lib/requests/rig.ts';

export type WireTestReport = Extract<WireTestMessage, { readonly kind: 'report' }>;
type Ending = Exclude<WireTestMessage, { readonly kind: 'report' }>;

export interface Wires {
  /** The newest, also when the test is over. */
  readonly report: WireTestReport | null;
  /** How the test came to its end; null while it runs. */
  readonly ending: Ending | null;
  readonly isConnected: boolean;
  /** Tests anew. */
  readonly again: () => void;
}

const wait_ms = 1500;

interface Seen {
  readonly report: WireTestReport | null;
  readonly ending: Ending | null;
  readonly isConnected: boolean;
}

const nothingSeen: Seen = { report: null, ending: null, isConnected: false };

/** Looks on at a test of the wires of a rig for as long as the page is open. */
export function useWires(rig: string): Wires {
  const [seen, setSeen] = useState<Seen>(nothingSeen);
  const [round, setRound] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new round begins a new test
  useEffect(() => {
    let isLeft = false;
    let timer = 0;
    let socket: WebSocket | null = null;
    const join = () => {
      let isOver = false;
      const scheme = location.protocol === 'https:' ? 'wss' : 'ws';
      socket = new WebSocket(`${scheme}://${location.host}${rigAddress(rig)}/wires`);
      socket.onopen = () => setSeen({ ...nothingSeen, isConnected: true });
      socket.onmessage = ({ data }) => {
        // The server of the same build sends the shape of the contract.
        const message = JSON.parse(String(data)) as WireTestMessage;
        isOver ||= message.kind !== 'report';
        setSeen((before) =>
          message.kind === 'report' ? { ...before, report: message } : { ...before, ending: message },
        );
      };
      socket.onclose = () => {
        if (isLeft || isOver) return;
        setSeen((before) => ({ ...before, isConnected: false }));
        timer = window.setTimeout(join, wait_ms);
      };
    };
    setSeen(nothingSeen);
    join();
    return () => {
      isLeft = true;
      clearTimeout(timer);
      socket?.close();
    };
  }, [rig, round]);
  const again = useCallback(() => setRound((before) => before + 1), []);
  return { ...seen, again };
}
