import type { BriefFinding, CampaignFinding } from '@provinghouse/contract';
import { Section } from '../../components/page.tsx';
import { text } from '../../lib/text.ts';
import { ApartTable } from './apart-table.tsx';
import { OrderMatter } from './order-matter.tsx';
import { PassTable } from './pass-table.tsx';
import { unbroken } from './planned-text.ts';
import { RigTable } from './rig-table.tsx';
import { ShowingTable } from './showing-table.tsx';

interface ComputedPartProps {
  readonly finding: CampaignFinding;
  readonly brief: BriefFinding;
}

/** What the pieces prepared can show at all: nothing of it is entered. */
export function ComputedPart({ finding, brief }: ComputedPartProps) {
  const words = text.brief;
  return (
    <>
      <Section label={words.showing} note={words.showingHow}>
        <ShowingTable finding={finding} brief={brief} />
      </Section>
      <Section label={words.passes} note={words.passesHow}>
        <PassTable products={brief.products} />
      </Section>
      <Section label={words.apart} note={words.apartHow}>
        <ApartTable sizes={brief.sizes} />
      </Section>
      <Section label={words.rigs} note={words.rigsHow}>
        <RigTable rigs={brief.rigs} />
      </Section>
      {brief.order === null ? null : (
        <Section label={words.order} note={words.orderHow}>
          <OrderMatter code={brief.campaign} order={brief.order} />
        </Section>
      )}
      <Section label={words.assumptions}>
        <Lines sentences={brief.assumptions} />
      </Section>
    </>
  );
}

export function Lines({ sentences }: { readonly sentences: readonly string[] }) {
  return (
    <ul className="sentences">
      {sentences.map((sentence) => (
        <li key={sentence}>{unbroken(sentence)}</li>
      ))}
    </ul>
  );
}
