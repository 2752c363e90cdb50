import { useState } from 'react';
import { text } from '../../lib/text.ts';

const words = text.reckoner;

/** Copies the address, which holds every entry. */
export function CopyAddress() {
  const [said, setSaid] = useState('');
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(window.location.href);
      setSaid(words.copied);
    } catch {
      setSaid(words.notCopied);
    }
  };
  return (
    <span className="copy-address">
      <span className="soft" role="status">
        {said}
      </span>
      <button type="button" className="press" onClick={() => void copy()} onBlur={() => setSaid('')}>
        {words.copy}
      </button>
    </span>
  );
}
