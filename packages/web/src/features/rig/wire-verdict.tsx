import type { ChannelReport, WireFinding } from '@provinghouse/contract';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { text } from '../../lib/text.ts';
import type { WireTestReport } from './use-wires.ts';

const words = text.rig.wires;

/** Findings that keep a pull from being recorded at all; the others are for a look. */
const grave: ReadonlySet<WireFinding['kind']> = new Set([
  'no force',
  'two of a kind',
  'away',
  'silent',
  'fell silent',
  'garbled',
  'none read',
]);

const ms = (value: number) => `${value < 10 ? value.toFixed(1) : Math.round(value)}\u00a0ms`;

/** One line that says whether the wires will do, and below it what is wrong and what to do. */
export function WireVerdict({ report }: { readonly report: WireTestReport | null }) {
  const findings = report?.findings ?? [];
  const [first, ...more] = findings;
  const isGrave = first !== undefined && grave.has(first.kind);
  const channels = report?.reports.flatMap((one) => one.channels) ?? [];
  const isHeard = channels.length > 0 && channels.every(({ readings, rate_Hz }) => readings > 0 && rate_Hz !== null);
  return (
    <div className="wire-verdict">
      <p className="wire-verdict-line" role="status">
        {first ? (
          <VerdictMark verdict={isGrave ? 'does not conform' : 'inconclusive'}>
            {isGrave ? words.wrong : words.doubtful}
          </VerdictMark>
        ) : isHeard ? (
          <VerdictMark verdict="conforms">{words.allHeard(channels.length)}</VerdictMark>
        ) : report === null ? (
          words.opening
        ) : (
          words.listening
        )}
      </p>
      {isHeard ? <p>{ratesOf(channels)}</p> : null}
      {first ? <Finding finding={first} /> : null}
      {more.length === 0 ? null : (
        <section aria-label={words.more} className="wire-more">
          <h3>{words.more}</h3>
          {more.map((finding) => (
            <Finding
              key={JSON.stringify(finding, ['kind', 'channel', 'doubt', 'source', 'signal'])}
              finding={finding}
            />
          ))}
        </section>
      )}
    </div>
  );
}

function Finding({ finding }: { readonly finding: WireFinding }) {
  const { words: what, cure } = words.finding(finding);
  return (
    <div className="wire-finding">
      <p className="wire-finding-words">{what}</p>
      {finding.kind === 'none read' || finding.kind === 'garbled' ? (
        <dl className="wire-beside">
          <dt>{words.lineThatCame}</dt>
          <dd>
            <code>{finding.example}</code>
          </dd>
          {finding.kind === 'none read' && finding.pattern !== null ? (
            <>
              <dt>{words.pattern}</dt>
              <dd>
                <code>{finding.pattern}</code>
              </dd>
            </>
          ) : null}
        </dl>
      ) : null}
      <p>
        <span className="soft">{words.cure}:</span> {cure}
      </p>
    </div>
  );
}

/** One rate where all channels have the same within a tenth, else each its own. */
function ratesOf(channels: readonly ChannelReport[]): string {
  const rates = channels.map(({ rate_Hz }) => rate_Hz ?? 0);
  const spread = ms(Math.max(...channels.map(({ arrivalSpread_ms }) => arrivalSpread_ms ?? 0)));
  const most = Math.max(...rates);
  if (Math.min(...rates) > 0.9 * most) return words.rates(rateText(most), spread);
  const each = channels.map(({ channel, rate_Hz }) => words.eachRate(channel, rateText(rate_Hz ?? 0)));
  return `${each.join(', ')}; ${words.steady(spread)}.`;
}

/** Readings a second, to two figures as long as it is being counted. */
export function rateText(rate_Hz: number): string {
  return rate_Hz >= 100 ? `${Math.round(rate_Hz)}` : `${Number(rate_Hz.toPrecision(2))}`;
}

export { ms as msText };
