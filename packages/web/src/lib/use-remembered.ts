import { useCallback, useState } from 'react';

/** A choice that this browser remembers from visit to visit, e.g. which gauge is in use. */
export function useRemembered(name: string, start: string): readonly [string, (value: string) => void] {
  const key = `provinghouse-remembered ${name}`;
  const [value, setValue] = useState(() => localStorage.getItem(key) ?? start);
  const remember = useCallback(
    (next: string) => {
      setValue(next);
      localStorage.setItem(key, next);
    },
    [key],
  );
  return [value, remember];
}
