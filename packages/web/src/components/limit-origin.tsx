import type { Flag, Limit } from '@provinghouse/core';
import { unitSign } from '../lib/figure.ts';
import { limitText } from '../lib/limit-text.ts';
import { text } from '../lib/text.ts';
import { Opens } from './opens.tsx';

/** A limit with the marks of its source; opens to the citations. */
export function LimitOrigin({ limit }: { readonly limit: Limit }) {
  return (
    <span className="limit">
      <Opens title={text.origin.limit} wide content={<Citations limit={limit} />}>
        <span className="figure">{limitText(limit)}</span>
      </Opens>
      <SourceBadges limit={limit} />
    </span>
  );
}

const doubtful: readonly Flag[] = ['memory', 'inference', 'suspect', 'conflict'];

/** In a word each: how far the source of a limit can be trusted. Broken outline for a doubt. */
function SourceBadges({ limit }: { readonly limit: Limit }) {
  const { flags, crossChecked, citations } = limit.provenance;
  const fromPage = citations.some((citation) => citation.kind === 'published-page');
  return (
    <span className="badges">
      {fromPage ? <span className="badge">{crossChecked ? text.twoPages : text.page}</span> : null}
      {flags.map((flag) => (
        <span key={flag} className={doubtful.includes(flag) ? 'badge badge-doubt' : 'badge'}>
          {text.flag[flag]}
        </span>
      ))}
    </span>
  );
}

function Citations({ limit }: { readonly limit: Limit }) {
  const { provenance } = limit;
  return (
    <>
      <p>{limit.statement}</p>
      <p className="soft">
        {limit.standard} ({limit.edition}), {limit.place}
      </p>
      {provenance.flags.map((flag) => (
        <p key={flag}>
          <span className={doubtful.includes(flag) ? 'badge badge-doubt' : 'badge'}>{text.flag[flag]}</span>{' '}
          {text.flagWords[flag]}
        </p>
      ))}
      <p>{provenance.crossChecked ? text.origin.checked : text.origin.unchecked}</p>
      {provenance.note === null ? null : <p>{provenance.note}</p>}
      <ul aria-label={text.origin.sources}>
        {provenance.citations.map((citation) => (
          <li key={citation.id}>{citation.text}</li>
        ))}
      </ul>
      {provenance.alternatives.length === 0 ? null : (
        <ul aria-label={text.origin.alternatives}>
          {provenance.alternatives.map((other) => (
            <li key={`${other.citation} ${other.value}`}>
              {other.value} {unitSign(limit.unit)}: {other.citation}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
