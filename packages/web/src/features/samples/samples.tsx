import './samples.css';
import type { Row, RowHeld } from '@provinghouse/contract';
import { useState } from 'react';
import { Link, useLocation, useSearch } from 'wouter';
import { Marking } from '../../components/campaign-frame.tsx';
import { AtFault, Reading } from '../../components/notice.tsx';
import { Page, Section } from '../../components/page.tsx';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { AlertList } from './alert-list.tsx';
import { Labels } from './labels.tsx';
import { Receive } from './receive.tsx';
import { SampleList } from './sample-list.tsx';
import { SampleSections } from './sample-sections.tsx';
import { type Bench, type SampleSeen, useBench } from './use-bench.ts';

const words = text.samples;

/** The samples of a campaign: received, photographed, moved, cut into pieces and labelled. */
export default function Samples({ code }: { readonly code: string }) {
  const bench = useBench(code);
  if (bench.state === 'at fault') return <AtFault fault={bench.fault} again={bench.again} />;
  if (bench.state === 'reading') return <Reading />;
  return (
    <>
      <Marking marking={bench.campaign.marking} />
      <SamplesPage bench={bench} />
    </>
  );
}

function SamplesPage({ bench }: { readonly bench: Bench }) {
  const { campaign, samples, isBlind } = bench;
  const [chosen, choose] = useChosen(campaign, samples);
  const alarmed = samples.filter(({ alerts }) => alerts.length > 0);
  return (
    <Page title={words.title} mark={campaign.title} lead={words.lead}>
      {isBlind ? (
        <Section label={text.brief.desk.standing.blindLabel}>
          <p className="lead-in">{words.blind}</p>
        </Section>
      ) : null}
      {alarmed.length === 0 ? null : (
        <Section label={words.attention} note={words.attentionHow}>
          <AlertList samples={alarmed} onChoose={choose} />
        </Section>
      )}
      {isBlind ? null : (
        <Section label={words.receive.label}>
          <ReceivePart bench={bench} onReceived={choose} />
        </Section>
      )}
      <Section label={words.list.label}>
        {samples.length === 0 ? (
          <p className="soft lead-in">{words.none}</p>
        ) : (
          <>
            <SampleList samples={samples} fates={bench.fates} chosen={chosen} onChoose={choose} />
            {chosen === null ? <p className="soft samples-choose">{words.one.choose}</p> : null}
          </>
        )}
      </Section>
      {chosen === null ? null : <SampleSections key={chosen.held.id} bench={bench} seen={chosen} />}
      <Section label={words.labels.label} note={words.labels.how}>
        <Labels bench={bench} chosen={chosen} />
      </Section>
    </Page>
  );
}

/** The sample that the address names, so that it can be come back to; a single one needs no choosing. */
function useChosen(
  campaign: Row<'campaign'>,
  samples: readonly SampleSeen[],
): readonly [SampleSeen | null, (sample: string) => void] {
  const search = useSearch();
  const [, go] = useLocation();
  const wanted = new URLSearchParams(search).get('sample');
  const found = samples.find(({ held }) => held.id === wanted);
  const only = wanted === null && samples.length === 1 ? samples[0] : undefined;
  const choose = (sample: string) => go(`${hrefs.samples(campaign.campaign)}?sample=${encodeURIComponent(sample)}`);
  return [found ?? only ?? null, choose];
}

interface ReceivePartProps {
  readonly bench: Bench;
  readonly onReceived: (sample: string) => void;
}

function ReceivePart({ bench, onReceived }: ReceivePartProps) {
  const [isOpen, setOpen] = useState(bench.samples.length === 0);
  if (bench.products.length === 0)
    return (
      <>
        <p className="lead-in">{words.noProduct}</p>
        <p>
          <Link href={hrefs.brief(bench.campaign.campaign)}>{words.toBrief}</Link>
        </p>
      </>
    );
  if (!isOpen)
    return (
      <button type="button" className="press" onClick={() => setOpen(true)}>
        {words.receive.key}
      </button>
    );
  return (
    <Receive
      bench={bench}
      onCancel={() => setOpen(false)}
      onReceived={(sample: RowHeld<'samples'>['id']) => {
        setOpen(false);
        onReceived(sample);
      }}
    />
  );
}
