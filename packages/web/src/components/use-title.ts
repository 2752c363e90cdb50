import { useEffect } from 'react';
import { text } from '../lib/text.ts';

/** Names the page in the window's title. */
export function useTitle(title: string): void {
  useEffect(() => {
    document.title = `${title} – ${text.name}`;
  }, [title]);
}
