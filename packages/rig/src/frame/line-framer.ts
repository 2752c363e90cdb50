/** Where a framer puts whole lines and what cannot be one. The bytes are only lent: copy what is to be kept. */
export interface LineSink {
  line(bytes: Uint8Array): void;
  /** More bytes than a line may have came without a line end. */
  overlong(bytes: Uint8Array): void;
}

export interface LineFramer {
  push(chunk: Uint8Array, sink: LineSink): void;
  /** The start of a line that never ended, taken out; null when there is none. */
  takeRest(): Uint8Array | null;
}

const CR = 13;
const LF = 10;

function joined(rest: Uint8Array, chunk: Uint8Array): Uint8Array {
  if (rest.length === 0) return chunk;
  const all = new Uint8Array(rest.length + chunk.length);
  all.set(rest);
  all.set(chunk, rest.length);
  return all;
}

/**
 * Cuts a stream of bytes into lines at CR, LF or both, however the bytes are chunked. Empty lines are passed over.
 * @param maximumBytes longest line; more than that without a line end is handed out as overlong
 */
export function lineFramer(maximumBytes = 1024): LineFramer {
  let rest: Uint8Array = new Uint8Array(0);
  return {
    push(chunk, sink) {
      const bytes = joined(rest, chunk);
      let from = 0;
      for (let i = rest.length; i < bytes.length; i++) {
        const byte = bytes[i];
        if (byte !== LF && byte !== CR) continue;
        if (i > from) {
          const line = bytes.subarray(from, i);
          if (line.length > maximumBytes) sink.overlong(line);
          else sink.line(line);
        }
        from = i + 1;
      }
      if (bytes.length - from > maximumBytes) {
        sink.overlong(bytes.subarray(from));
        from = bytes.length;
      }
      rest = new Uint8Array(bytes.subarray(from));
    },
    takeRest() {
      if (rest.length === 0) return null;
      const taken = rest;
      rest = new Uint8Array(0);
      return taken;
    },
  };
}
