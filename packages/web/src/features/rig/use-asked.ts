import { useCallback, useEffect, useRef, useState } from 'react';

const asksFor_ms = 5000;

/** A deed that asks once: the first press asks, a second within five seconds does it. */
export function useAsked(act: () => void): { readonly isAsking: boolean; readonly press: () => void } {
  const [isAsking, setAsking] = useState(false);
  const timer = useRef(0);
  const latest = useRef(act);
  latest.current = act;
  useEffect(() => () => clearTimeout(timer.current), []);
  const press = useCallback(() => {
    clearTimeout(timer.current);
    setAsking((asked) => {
      if (asked) latest.current();
      else timer.current = window.setTimeout(() => setAsking(false), asksFor_ms);
      return !asked;
    });
  }, []);
  return { isAsking, press };
}
