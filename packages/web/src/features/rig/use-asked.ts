import { useCallback, useEffect, useRef, useState } from 'react';

const asksFor_ms = 5000;

/** A deed that asks once: the first press asks, a second within five seconds does it. */
export function useAsked(act: () => void): { readonly isAsking: boolean; readonly press: () => void } {
  const [isAsking, setAsking] = useState(false);
  const timer = useRef<number | null>(null);
  const rest = useCallback(() => {
    if (timer.current !== null) clearTimeout(timer.current);
    timer.current = null;
    setAsking(false);
  }, []);
  useEffect(() => rest, [rest]);
  const press = () => {
    if (timer.current !== null) {
      rest();
      act();
      return;
    }
    timer.current = window.setTimeout(rest, asksFor_ms);
    setAsking(true);
  };
  return { isAsking, press };
}
