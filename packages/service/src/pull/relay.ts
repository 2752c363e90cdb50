import type { LiveMessage } from '@provinghouse/contract';
import type { Source, SourceSink } from '@provinghouse/rig';
import { isPracticeLine } from '@provinghouse/rig/practice';
import { previewOf } from './wire-preview.ts';

export interface RelayNews {
  readonly tell: (message: LiveMessage) => void;
  readonly rejected: () => void;
  /** What comes says of itself that it is simulated. */
  readonly practice: () => void;
}

/** A source that listens from arming on and is handed to the recording when it begins. */
export interface Relay {
  readonly source: Source;
  /** Opens the wire itself; until the recording begins its force is shown and nothing is kept. */
  listen(): Promise<void>;
  close(): Promise<void>;
}

export function relay(wire: Source, { tell, rejected, practice }: RelayNews): Relay {
  const preview = previewOf(tell);
  let sink: SourceSink | null = null;
  let isOver = false;
  let isPractice = false;
  /** A wire may say so with every message; once is enough. */
  const markPractice = () => {
    if (isPractice) return;
    isPractice = true;
    practice();
    sink?.practice?.();
  };
  const trouble = (words: string) => {
    if (sink) sink.trouble(words);
    // Once the recording is over, a rig that hangs up is no trouble.
    else if (!isOver) tell({ kind: 'trouble', time_s: null, words });
  };
  return {
    source: {
      ...wire,
      start: async (recording) => {
        sink = recording;
        // Said once at the connection, maybe long before the recording began.
        if (isPractice) recording.practice?.();
      },
      stop: async () => {
        isOver = true;
        sink = null;
      },
    },
    listen: () =>
      wire.start({
        readings: (batch) => (sink ? sink.readings(batch) : isOver ? undefined : preview.readings(batch)),
        rejected: (bytes, why) => {
          if (isPracticeLine(new TextDecoder().decode(bytes))) markPractice();
          if (!sink) return;
          rejected();
          sink.rejected(bytes, why);
        },
        trouble,
        practice: markPractice,
        ended: (why) => sink?.ended(why),
      }),
    close: () => wire.stop(),
  };
}
