import { useEffect, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import { benchPlaces, campaignPlaces } from '../lib/places.ts';
import { text } from '../lib/text.ts';
import { GoTo } from './go-to.tsx';
import { SheetOver } from './sheet-over.tsx';

type Open = 'go to' | 'keys' | null;

/** After G the letter of a place is waited for so long. */
const letterWait_ms = 1500;

/** The ways by keyboard that hold on every screen: Ctrl K or / finds a place, G and a letter leads to one, ? shows them all. */
export function KeyWays({ code }: { readonly code: string | null }) {
  const [open, setOpen] = useState<Open>(null);
  const [, go] = useLocation();
  const since = useRef(Number.NEGATIVE_INFINITY);
  useEffect(() => {
    const places = [...(code === null ? [] : campaignPlaces(code)), ...benchPlaces()];
    const onKey = (event: KeyboardEvent) => {
      if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'k') {
        event.preventDefault();
        setOpen('go to');
        return;
      }
      if (event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return;
      if (event.timeStamp - since.current < letterWait_ms) {
        since.current = Number.NEGATIVE_INFINITY;
        const place = places.find(({ letter }) => letter === event.key.toLowerCase());
        if (!place) return;
        event.preventDefault();
        // The letter is used up: a screen that has a key of the same letter must not hear it, too.
        event.stopImmediatePropagation();
        go(place.href);
      } else if (event.key === 'g') since.current = event.timeStamp;
      else if (event.key === '/') {
        event.preventDefault();
        setOpen('go to');
      } else if (event.key === '?') setOpen('keys');
    };
    window.addEventListener('keydown', onKey, { capture: true });
    return () => window.removeEventListener('keydown', onKey, { capture: true });
  }, [code, go]);
  const close = () => setOpen(null);
  return (
    <>
      <button type="button" className="ground" onClick={() => setOpen('go to')} aria-keyshortcuts="Control+K">
        {text.goTo.open}
      </button>
      {open === 'go to' ? <GoTo code={code} onClose={close} /> : null}
      {open === 'keys' ? <KeysSheet code={code} onClose={close} /> : null}
    </>
  );
}

/** Whether a key is meant for a field, or for a sheet that lies over the page. */
function isTyping(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest('input, textarea, select, dialog, [contenteditable]') !== null;
}

function KeysSheet({ code, onClose }: { readonly code: string | null; readonly onClose: () => void }) {
  const places = [...(code === null ? [] : campaignPlaces(code)), ...benchPlaces()];
  return (
    <SheetOver title={text.goTo.keysTitle} onClose={onClose}>
      <div className="keys-sheet">
        <dl>
          {text.goTo.keys.map(([keys, words]) => (
            <div key={keys}>
              <dt>{words}</dt>
              <dd>
                <kbd>{keys}</kbd>
              </dd>
            </div>
          ))}
          {places.map(({ href, name, letter }) => (
            <div key={href}>
              <dt>{name}</dt>
              <dd>
                <kbd>G {letter.toUpperCase()}</kbd>
              </dd>
            </div>
          ))}
        </dl>
        <p className="soft small">{text.goTo.keysFoot}</p>
      </div>
    </SheetOver>
  );
}
