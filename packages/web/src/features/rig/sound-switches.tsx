import type { WatchView } from '@provinghouse/core';
import { useEffect, useRef, useState } from 'react';
import { text } from '../../lib/text.ts';
import { cuesBetween } from './cue.ts';
import type { LiveState } from './live-state.ts';
import { type Cue, cues, sound, wakeSound } from './sound.ts';

const key = 'provinghouse-muted-sounds';

/** A switch for each cue. The choice is kept on this device; a press on anything wakes the sound. */
export function SoundSwitches({ state }: { readonly state: LiveState }) {
  const [muted, setMuted] = useState<readonly Cue[]>(readMuted);
  const before = useRef<WatchView | null>(null);
  useEffect(() => {
    for (const cue of cuesBetween(before.current, state.view)) if (!muted.includes(cue)) sound(cue);
    before.current = state.view;
  }, [state.view, muted]);
  useEffect(() => {
    window.addEventListener('pointerdown', wakeSound);
    window.addEventListener('keydown', wakeSound);
    return () => {
      window.removeEventListener('pointerdown', wakeSound);
      window.removeEventListener('keydown', wakeSound);
    };
  }, []);
  const turn = (cue: Cue) => {
    const next = muted.includes(cue) ? muted.filter((one) => one !== cue) : [...muted, cue];
    setMuted(next);
    localStorage.setItem(key, next.join(' '));
    if (!next.includes(cue)) sound(cue);
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would bring a border and a legend of its own
    <div className="sounds" role="group" aria-label={text.rig.sound.label}>
      {cues.map((cue) => (
        <button key={cue} type="button" className="press" aria-pressed={!muted.includes(cue)} onClick={() => turn(cue)}>
          {text.rig.sound[cue]}: {muted.includes(cue) ? text.rig.sound.off : text.rig.sound.on}
        </button>
      ))}
    </div>
  );
}

function readMuted(): readonly Cue[] {
  const kept = (localStorage.getItem(key) ?? '').split(' ');
  return cues.filter((cue) => kept.includes(cue));
}
