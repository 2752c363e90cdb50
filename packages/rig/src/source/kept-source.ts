import { type Keeper, keepOpen, type Wire } from './keep-open.ts';
import { type LineFormat, type LineReader, lineReader, openLineFormat } from './line-reader.ts';
import type { Source, SourceClock, SourceSink } from './source.ts';

/**
 * A source over a connection that is kept open from its start to its stop.
 * @param opener given where readings go, gives what opens the connection once
 */
export function keptSource(
  facts: Omit<Source, 'start' | 'stop'>,
  opener: (sink: SourceSink) => () => Promise<Wire>,
): Source {
  let keeper: Keeper | null = null;
  return {
    ...facts,
    async start(sink) {
      keeper = keepOpen({
        describe: facts.describe,
        open: opener(sink),
        trouble: (words) => sink.trouble(words),
        connection: (isOpen) => sink.connection?.(isOpen),
      });
      await keeper.tried;
    },
    async stop() {
      await keeper?.stop();
    },
  };
}

/** Whose clock the readings are timed by. */
export function clockOf(hasOwnClock: boolean, isClockFree: boolean | undefined): SourceClock {
  if (!hasOwnClock) return 'arrival';
  return isClockFree ? 'free' : 'own';
}

interface LinesOptions extends LineFormat {
  readonly isClockFree?: boolean | undefined;
}

/**
 * A source of ASCII lines, whatever they come over.
 * @throws InputError source/pattern, source/unit-*, source/range
 */
export function keptLines(
  describe: string,
  options: LinesOptions,
  open: (reader: LineReader) => Promise<Wire>,
): Source {
  const format = openLineFormat(options);
  const facts = {
    describe,
    channels: format.channels,
    pattern: options.pattern,
    clock: clockOf(format.hasOwnClock, options.isClockFree),
  };
  return keptSource(facts, (sink) => {
    const reader = lineReader(format, sink);
    return () => open(reader);
  });
}
