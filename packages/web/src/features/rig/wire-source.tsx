import type { ChannelReport, WireReport } from '@provinghouse/contract';
import { Section } from '../../components/page.tsx';
import { text } from '../../lib/text.ts';
import { msText, rateText } from './wire-verdict.tsx';

const words = text.rig.wires;
const count = (value: number) => value.toLocaleString('en').replaceAll(',', '\u202f');

/** One source: its channels as they read now, its lines as they come, and what could not be read. */
export function WireSource({ report }: { readonly report: WireReport }) {
  return (
    <>
      <Section label={words.heard} note={report.describe}>
        <p className="soft">
          {report.isOpen === null ? '' : `${report.isOpen ? words.source.open : words.source.away}, `}
          {words.source.bytes(count(report.bytes))}
          {report.pattern === null ? null : (
            <>
              {'. '}
              {words.pattern} <code>{report.pattern}</code>
            </>
          )}
        </p>
        <div className="wire-channels">
          {report.channels.map((channel) => (
            <Channel key={channel.channel} channel={channel} />
          ))}
        </div>
      </Section>
      <Section label={words.raw} note={words.rawNote}>
        {report.lines.length === 0 ? (
          <p className="soft">{words.rawNone}</p>
        ) : (
          <ol className="wire-lines">
            {report.lines.map((line, at) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: lines that read the same come again and again
              <li key={at}>
                <span className="wire-when">{line.at_s.toFixed(2)}</span>
                {line.place === null ? null : <span className="wire-place">{line.place}</span>}
                <code>{line.text}</code>
              </li>
            ))}
          </ol>
        )}
      </Section>
      <Section label={words.unread}>
        <Unread report={report} />
      </Section>
      {report.troubles.length === 0 ? null : (
        <Section label={words.troubles}>
          <ul className="sentences">
            {[...new Set(report.troubles)].map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
        </Section>
      )}
    </>
  );
}

function Channel({ channel }: { readonly channel: ChannelReport }) {
  const { last, least, greatest, benchUnit, readings } = channel;
  const measured = (value: number | null) => (value === null ? text.none : `${valueText(value)}\u00a0${benchUnit}`);
  const facts: readonly (readonly [string, string])[] = [
    [words.channel.rate, channel.rate_Hz === null ? text.none : rateText(channel.rate_Hz)],
    [words.channel.spread, channel.arrivalSpread_ms === null ? text.none : msText(channel.arrivalSpread_ms)],
    [words.channel.longest, channel.longestWait_ms === null ? text.none : msText(channel.longestWait_ms)],
    [words.channel.readings, count(readings)],
    [words.channel.lowest, measured(least)],
    [words.channel.highest, measured(greatest)],
    [words.channel.unit, channel.unit],
  ];
  return (
    <section className="wire-channel" aria-label={channel.channel}>
      <h3>{channel.channel}</h3>
      <p className="wire-now">
        {last === null ? (
          <span className="wire-none">{words.channel.none}</span>
        ) : (
          <>
            {valueText(last)}
            <span className="unit">{benchUnit}</span>
          </>
        )}
      </p>
      <dl>
        {facts.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {channel.doubts.length === 0 ? null : (
        <ul className="wire-doubts" aria-label={words.channel.doubts}>
          {channel.doubts.map(({ at_s, words: doubt }) => (
            <li key={`${at_s} ${doubt}`}>{text.rig.markAt(`${at_s.toFixed(1)}\u00a0s`, doubt)}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

function Unread({ report: { rejected, rejectedBytes, reasons } }: { readonly report: WireReport }) {
  if (rejected === 0) return <p className="soft">{words.unreadNone}</p>;
  return (
    <>
      <p>{words.unreadCount(count(rejected), count(rejectedBytes))}</p>
      <ul className="wire-reasons">
        {reasons.map(({ why, count: often, example }) => (
          <li key={why}>
            <span>{why}</span>
            <span className="soft">{count(often)}</span>
            <code>{example}</code>
          </li>
        ))}
      </ul>
    </>
  );
}

/** Three places, as a bench looks at a zero; a true minus. */
function valueText(value: number): string {
  const digits = value.toFixed(3);
  return (/[1-9]/.test(digits) ? digits : digits.replace('-', '')).replace('-', '\u2212');
}
