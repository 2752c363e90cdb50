import { type RefObject, useEffect } from 'react';

/** Sets the person down in the field when the page opens, and brings them back to it with the first digit typed anywhere else. */
export function useFieldFocus(box: RefObject<HTMLInputElement | null>, of: string): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: another piece is another page
  useEffect(() => box.current?.focus(), [box, of]);
  useEffect(() => {
    const onKey = ({ key, target, ctrlKey, metaKey, altKey }: KeyboardEvent) => {
      if (!/^[0-9.,]$/.test(key) || ctrlKey || metaKey || altKey) return;
      const isElsewhere = target instanceof Element && target.closest('input, select, textarea, dialog') === null;
      if (isElsewhere) box.current?.focus();
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, [box]);
}
