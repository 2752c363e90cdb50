import type { HangingInCampaign } from '@provinghouse/contract';
import { useState } from 'react';
import { Link } from 'wouter';
import { DayField } from '../../components/when-field.tsx';
import { readAt } from '../../lib/api/address.ts';
import { readDay } from '../../lib/entry/bench-clock.ts';
import { today } from '../../lib/entry/today.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { useRecord } from '../../lib/use-record.ts';

/** What was read with an instrument between two days, over all campaigns. */
export function Hanging({ instrument }: { readonly instrument: string }) {
  const [from, setFrom] = useState('');
  const [to, setTo] = useState(today());
  const [first, last] = [readDay(from), readDay(to)];
  return (
    <>
      <div className="kit-days">
        <DayField label={text.kit.from} value={from} onChange={setFrom} />
        <DayField label={text.kit.to} value={to} onChange={setTo} isOftenToday />
      </div>
      {first.ok && last.ok ? <Found instrument={instrument} from={first.value} to={last.value} /> : null}
    </>
  );
}

function Found({ instrument, from, to }: { readonly instrument: string; readonly from: string; readonly to: string }) {
  const found = useRecord(readAt('/api/kit/{instrument}/hanging', { path: { instrument }, query: { from, to } }));
  if (found.state === 'reading') return <p className="soft">{text.loading}</p>;
  if (found.state === 'at fault')
    return (
      <p className="form-fault" role="alert">
        {found.fault.detail}
      </p>
    );
  if (found.record.campaigns.length === 0) return <p role="status">{text.kit.hangingNone}</p>;
  return (
    <ul className="kit-hanging">
      {found.record.campaigns.map((one) => (
        <li key={one.campaign}>
          <Link href={hrefs.board(one.campaign)}>{one.campaign}</Link> <span className="soft">{one.title}</span>
          <ul>
            {linesOf(one).map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </li>
      ))}
    </ul>
  );
}

function linesOf({ gauging, zinc, pulls }: HangingInCampaign): string[] {
  const undated = (count: number) => (count === 0 ? '' : `; ${text.kit.undated(count)}`);
  return [
    ...(gauging.readings === 0
      ? []
      : [`${text.kit.hangingGauging(gauging.readings, gauging.pieces)}${undated(gauging.undated)}`]),
    ...(zinc.readings === 0 ? [] : [`${text.kit.hangingZinc(zinc.readings, zinc.pieces)}${undated(zinc.undated)}`]),
    ...pulls.map(({ pull, piece, on }) => text.kit.hangingPull(pull, piece, on)),
  ];
}
