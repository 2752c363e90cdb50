import './reckoner.css';
import { useEffect, useRef } from 'react';
import { Page, Section } from '../../components/page.tsx';
import { text } from '../../lib/text.ts';
import { CalculationFinder } from './calculation-finder.tsx';
import { ChainFields } from './chain-fields.tsx';
import { CopyAddress } from './copy-address.tsx';
import { longestSheet } from './sheet.ts';
import { StepSection } from './step-section.tsx';
import { useSheet } from './use-sheet.ts';

const words = text.reckoner;

/** Single calculations, one or several that feed each other, all in the address. */
export default function Reckoner() {
  const { sheet, reckoned, actions, focus } = useSheet();
  const steps = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (focus.count === 0) return;
    const section = steps.current?.querySelector(`[data-step="${focus.step}"]`);
    const fields = [...(section?.querySelectorAll<HTMLInputElement | HTMLSelectElement>('input, select') ?? [])];
    const first = fields.find(({ value }) => value === '') ?? fields[0];
    first?.focus();
    section?.scrollIntoView({ block: 'nearest' });
  }, [focus]);
  return (
    <Page title={words.title} lead={words.lead} aside={sheet.steps.length === 0 ? null : <CopyAddress />}>
      <Section label={words.find} note={words.findHow}>
        <CalculationFinder
          hasSteps={sheet.steps.length > 0}
          isFull={sheet.steps.length >= longestSheet}
          actions={actions}
        />
      </Section>
      <Section label={words.chain} note={words.chainHow}>
        <ChainFields chain={sheet.chain} values={reckoned.chain} onChain={actions.chain} />
      </Section>
      <div ref={steps}>
        {reckoned.steps.map((step) => (
          <StepSection
            key={`${step.number} ${step.name}`}
            step={step}
            all={reckoned}
            count={reckoned.steps.length}
            actions={actions}
          />
        ))}
      </div>
    </Page>
  );
}
