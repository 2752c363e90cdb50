import { useEffect, useState } from 'react';

interface Pasted {
  /** What was pasted; empty where the sheet was opened by its key; null while it is closed. */
  readonly pasted: string | null;
  readonly openPaste: (text: string) => void;
  readonly closePaste: () => void;
}

/** A table pasted anywhere on the page. One number pasted into the field is a number typed. */
export function usePasted(): Pasted {
  const [pasted, setPasted] = useState<string | null>(null);
  useEffect(() => {
    const onPaste = (event: ClipboardEvent) => {
      const table = event.clipboardData?.getData('text/plain') ?? '';
      const isForm = event.target instanceof Element && event.target.closest('textarea, dialog') !== null;
      if (isForm || !/[\t\n]/.test(table.trim())) return;
      event.preventDefault();
      setPasted(table);
    };
    document.addEventListener('paste', onPaste);
    return () => document.removeEventListener('paste', onPaste);
  }, []);
  return { pasted, openPaste: setPasted, closePaste: () => setPasted(null) };
}
