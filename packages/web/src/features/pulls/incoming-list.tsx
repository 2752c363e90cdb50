import { type DragEvent, useEffect, useState } from 'react';
import { text } from '../../lib/text.ts';
import { IncomingFile } from './incoming-file.tsx';
import { PanelForm } from './panel-form.tsx';
import type { Desk } from './use-desk.ts';

interface Waiting {
  readonly id: number;
  readonly file: File;
  /** Known once its bytes are on the server. */
  readonly sha256: string | null;
}

let lastId = 0;

/** Where recordings are dropped or a panel reading is keyed, and the files that wait to be looked at. */
export function IncomingList({ desk }: { readonly desk: Desk }) {
  const words = text.pulls.bring;
  const [waiting, setWaiting] = useState<readonly Waiting[]>([]);
  const [opened, setOpened] = useState<number | null>(null);
  const [isPanel, setPanel] = useState(false);
  const [told, setTold] = useState('');
  useStayingPut(waiting.length > 0);
  // Where the file that was open is gone, the next one takes its place.
  const shown = opened === null || waiting.some(({ id }) => id === opened) ? opened : (waiting[0]?.id ?? null);
  const add = (files: readonly File[]) => {
    const fresh = files.map((file) => ({ id: ++lastId, file, sha256: null }));
    setWaiting((now) => [...now, ...fresh]);
    setOpened(shown ?? fresh[0]?.id ?? null);
    setTold('');
  };
  const leave = (id: number) => setWaiting((now) => now.filter((one) => one.id !== id));
  return (
    <>
      <DropZone onFiles={add} onPanel={() => setPanel(true)} />
      <p role="status" className="pulls-told">
        {told !== '' ? told : waiting.length > 0 ? words.list(waiting.length) : ''}
      </p>
      <ul className="pulls-files">
        {waiting.map(({ id, file, sha256 }, at) => (
          <IncomingFile
            key={id}
            desk={desk}
            file={file}
            isOpen={shown === id}
            sameAs={waiting.slice(0, at).find((one) => sha256 !== null && one.sha256 === sha256)?.file.name ?? null}
            onHere={(here) => setWaiting((now) => now.map((one) => (one.id === id ? { ...one, sha256: here } : one)))}
            onOpen={() => setOpened(shown === id ? null : id)}
            onAway={() => leave(id)}
            onKept={({ pull, piece }) => {
              leave(id);
              setTold(words.accepted(pull, piece));
            }}
          />
        ))}
      </ul>
      {isPanel ? (
        <PanelForm
          desk={desk}
          onDone={(kept) => {
            setPanel(false);
            if (kept) setTold(words.accepted(kept.pull, kept.piece));
          }}
        />
      ) : null}
    </>
  );
}

interface DropZoneProps {
  readonly onFiles: (files: readonly File[]) => void;
  readonly onPanel: () => void;
}

function DropZone({ onFiles, onPanel }: DropZoneProps) {
  const words = text.pulls.bring;
  const [isOver, setOver] = useState(false);
  useMissedDrops();
  const take = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    const files = [...event.dataTransfer.files];
    if (files.length > 0) onFiles(files);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the keys inside do the same for whoever does not drop
    <div
      className="pulls-drop"
      data-over={isOver || undefined}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={take}
    >
      <p>
        <strong>{words.drop}</strong> <span className="soft line">{words.dropMany}</span>
      </p>
      <p className="form-keys">
        <label className="press press-main pulls-choose">
          {words.choose}
          <input
            type="file"
            multiple
            className="for-ears"
            onChange={(event) => {
              onFiles([...(event.currentTarget.files ?? [])]);
              // The same file chosen again must be told again.
              event.currentTarget.value = '';
            }}
          />
        </label>
        <button type="button" className="press" onClick={onPanel}>
          {words.panel}
        </button>
      </p>
    </div>
  );
}

/** A file that misses the place would be opened by the browser instead of the page. */
function useMissedDrops(): void {
  useEffect(() => {
    const hold = (event: Event) => event.preventDefault();
    window.addEventListener('dragover', hold);
    window.addEventListener('drop', hold);
    return () => {
      window.removeEventListener('dragover', hold);
      window.removeEventListener('drop', hold);
    };
  }, []);
}

/** The browser asks before the page is left while files wait: their bytes are not kept anywhere yet. */
function useStayingPut(isWaiting: boolean): void {
  useEffect(() => {
    if (!isWaiting) return;
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', ask);
    return () => window.removeEventListener('beforeunload', ask);
  }, [isWaiting]);
}
