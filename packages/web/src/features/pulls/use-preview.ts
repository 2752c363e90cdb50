import type { TracePreview, TracePreviewRequest } from '@provinghouse/contract';
import { useEffect, useState } from 'react';
import type { Fault } from '../../lib/request.ts';
import { send } from '../../lib/send.ts';

export interface PreviewState {
  /** As last read; of an earlier choice while `isStale`. */
  readonly preview: TracePreview | null;
  readonly isStale: boolean;
  readonly fault: Fault | null;
}

const retry_ms = 3000;

/** What a file that was sent would be as the recording of a pull, and anew whenever something it hangs on is chosen. */
export function usePreview(code: string, request: TracePreviewRequest | null): PreviewState {
  const asked = request === null ? null : JSON.stringify(request);
  const [seen, setSeen] = useState<{ readonly of: string; readonly preview: TracePreview } | null>(null);
  const [failed, setFailed] = useState<{ readonly of: string; readonly fault: Fault } | null>(null);
  const [attempt, setAttempt] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the request is told by its text, and each attempt asks anew
  useEffect(() => {
    if (asked === null || request === null) return;
    let isGone = false;
    let timer: ReturnType<typeof setTimeout> | null = null;
    void send<TracePreview>(`/api/campaigns/${encodeURIComponent(code)}/trace-preview`, request).then((reply) => {
      if (isGone) return;
      if (reply.ok) {
        setSeen({ of: asked, preview: reply.record });
        setFailed(null);
        return;
      }
      setFailed({ of: asked, fault: reply.fault });
      if (reply.fault.code === 'no-answer') timer = setTimeout(() => setAttempt((count) => count + 1), retry_ms);
    });
    return () => {
      isGone = true;
      if (timer !== null) clearTimeout(timer);
    };
  }, [code, asked, attempt]);
  return {
    preview: seen?.preview ?? null,
    isStale: seen?.of !== asked,
    fault: failed?.of === asked ? failed.fault : null,
  };
}
