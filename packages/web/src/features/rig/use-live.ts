import type { LiveMessage } from '@provinghouse/contract';
import { useEffect, useState } from 'react';
import { rigAddress } from '../../lib/requests/rig.ts';
import { type LiveState, nothingTold, told } from './live-state.ts';

export interface Live {
  readonly state: LiveState;
  readonly isConnected: boolean;
}

const firstWait_ms = 250;
const longestWait_ms = 4000;

/**
 * Follows a rig over a WebSocket, and joins again when the connection was lost; whoever joins is told the story from its beginning. What came
 * within one frame of the screen is shown at once.
 */
export function useLive(rig: string, onTurn: () => void): Live {
  const [live, setLive] = useState<Live>({ state: nothingTold, isConnected: false });
  useEffect(() => {
    let wait_ms = firstWait_ms;
    let isLeft = false;
    let timer = 0;
    let frame = 0;
    let socket: WebSocket | null = null;
    let state = nothingTold;
    const show = (isConnected: boolean) => {
      cancelAnimationFrame(frame);
      frame = requestAnimationFrame(() => setLive({ state, isConnected }));
    };
    const join = () => {
      socket = new WebSocket(
        `${location.protocol === 'https:' ? 'wss' : 'ws'}://${location.host}${rigAddress(rig)}/live`,
      );
      socket.onopen = () => {
        wait_ms = firstWait_ms;
        state = nothingTold;
        show(true);
        onTurn();
      };
      socket.onmessage = ({ data }) => {
        // The server of the same build sends the shape of the contract.
        const message = JSON.parse(String(data)) as LiveMessage;
        state = told(state, message);
        show(true);
        if (isTurn(message)) onTurn();
      };
      socket.onclose = () => {
        if (isLeft) return;
        show(false);
        timer = window.setTimeout(join, wait_ms);
        wait_ms = Math.min(2 * wait_ms, longestWait_ms);
      };
    };
    join();
    return () => {
      isLeft = true;
      clearTimeout(timer);
      cancelAnimationFrame(frame);
      socket?.close();
    };
  }, [rig, onTurn]);
  return live;
}

/** Whether the desk of the rig stands otherwise after it. */
function isTurn(message: LiveMessage): boolean {
  if (message.kind === 'keeping') return message.share === 0 || message.share === 1;
  return turns.has(message.kind);
}

const turns: ReadonlySet<LiveMessage['kind']> = new Set(['armed', 'started', 'disarmed', 'ended']);
