import type { ReaderAgreement } from '@provinghouse/contract';
import type { Kappa } from '@provinghouse/core';
import { Section } from '../../components/page.tsx';
import { Told } from '../../components/told.tsx';
import { text } from '../../lib/text.ts';

/** How far the readers of the breaks agree beyond chance. */
export function Readers({ agreement }: { readonly agreement: ReaderAgreement | null }) {
  const { readers: words } = text.findings;
  if (agreement === null) {
    return (
      <Section label={words.label}>
        <p className="soft">{words.none}</p>
      </Section>
    );
  }
  return (
    <Section label={words.label} note={words.who(agreement.readers)}>
      <KappaLine name={words.position} kappa={agreement.position} />
      <KappaLine name={words.mode} kappa={agreement.mode} />
    </Section>
  );
}

function KappaLine({ name, kappa }: { readonly name: string; readonly kappa: Kappa }) {
  return (
    <p>
      {name}:{' '}
      <Told title={name} told={kappa}>
        {kappa.kappa === null ? text.findings.standsOut.cannotTell : text.findings.readers.kappa(kappa.kappa)}
      </Told>{' '}
      <span className="soft">{kappa.sentence}</span>
    </p>
  );
}
