import { Link } from 'wouter';
import type { Fault } from '../../lib/request.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';

/** What the record said against an entry, with the way to its cure where that lies in another place. */
export function Refusal({ code, fault }: { readonly code: string; readonly fault: Fault | null }) {
  if (fault === null) return null;
  return (
    <p className="form-fault" role="alert">
      {fault.detail}{' '}
      {fault.fault === 'entry/plan-not-frozen' ? <Link href={hrefs.brief(code)}>{text.pulls.toBrief}</Link> : null}
    </p>
  );
}
