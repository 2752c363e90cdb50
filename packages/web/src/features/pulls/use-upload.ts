import type { HeldFile } from '@provinghouse/contract';
import { useEffect, useState } from 'react';
import type { Fault } from '../../lib/request.ts';
import { text } from '../../lib/text.ts';

export type Upload =
  | { readonly state: 'sending'; readonly share: number }
  | { readonly state: 'cut off'; readonly again: () => void }
  | { readonly state: 'refused'; readonly fault: Fault }
  | { readonly state: 'here'; readonly sha256: string };

const retry_ms = 3000;

/** Largest file the server takes. */
const limit_bytes = 256 * 1024 * 1024;

/**
 * Sends the bytes of a file ahead of the row that names it, and says how far it is. A connection that is lost loses nothing: the file is on this
 * computer, and is sent again until the server has it.
 */
export function useUpload(file: File): Upload {
  const [upload, setUpload] = useState<Upload>({ state: 'sending', share: 0 });
  const [attempt, setAttempt] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each attempt sends anew
  useEffect(() => {
    const local = localFault(file);
    if (local) return setUpload({ state: 'refused', fault: local });
    let timer: ReturnType<typeof setTimeout> | null = null;
    const again = () => setAttempt((count) => count + 1);
    const request = put(file, {
      onShare: (share) => setUpload({ state: 'sending', share }),
      onEnd: (end) => {
        setUpload(end === null ? { state: 'cut off', again } : end);
        if (end === null) timer = setTimeout(again, retry_ms);
      },
    });
    return () => {
      if (timer !== null) clearTimeout(timer);
      request.abort();
    };
  }, [file, attempt]);
  return upload;
}

function localFault(file: File): Fault | null {
  const words = text.pulls.sending;
  if (file.size === 0) return { code: 'trace/empty', detail: words.empty };
  if (file.size > limit_bytes) return { code: 'body-malformed', detail: words.large(words.size(file.size)) };
  return null;
}

interface Told {
  readonly onShare: (share: number) => void;
  /** Null where there was no answer. */
  readonly onEnd: (end: Upload | null) => void;
}

/** Only this older way of asking tells how far the sending is. */
function put(file: File, { onShare, onEnd }: Told): XMLHttpRequest {
  const request = new XMLHttpRequest();
  request.open('PUT', '/api/files');
  request.setRequestHeader('content-type', 'application/octet-stream');
  request.upload.addEventListener('progress', ({ loaded, total }) => {
    if (total > 0) onShare(loaded / total);
  });
  request.addEventListener('load', () => onEnd(endOf(request)));
  request.addEventListener('error', () => onEnd(null));
  request.addEventListener('timeout', () => onEnd(null));
  request.send(file);
  return request;
}

function endOf({ status, responseText }: XMLHttpRequest): Upload | null {
  if (status === 0 || status >= 502) return null;
  try {
    const body: unknown = JSON.parse(responseText);
    if (status === 200) {
      // The server of the same build sends the shape of the contract.
      const held = body as HeldFile;
      return { state: 'here', sha256: held.sha256 };
    }
    const detail: unknown = typeof body === 'object' && body !== null ? Reflect.get(body, 'detail') : null;
    return { state: 'refused', fault: { code: `status-${status}`, detail: typeof detail === 'string' ? detail : '' } };
  } catch {
    return null;
  }
}
