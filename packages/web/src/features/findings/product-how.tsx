import type { CampaignFinding, ProductFinding } from '@provinghouse/contract';
import { figureText } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';
import type { HowFound } from './how-found.tsx';

const { how } = text.findings;

/** How the mass of a metre came about: the samples that were weighed. */
export function massHow({ samples }: CampaignFinding, { product }: ProductFinding): HowFound {
  const weighed = samples.flatMap(({ sample, product: of, mass_kg, length_m }) =>
    of === product && mass_kg !== null && length_m !== null ? [{ sample, mass_kg, length_m }] : [],
  );
  return {
    inputs: weighed.map(({ sample, mass_kg, length_m }) => (
      <span key={sample} className="line">
        {how.massFrom(sample, figureText({ value: mass_kg, unit: 'kg' }), figureText({ value: length_m, unit: 'm' }))}
      </span>
    )),
    method: how.mass,
    sure: weighed.length < 2 ? how.massUnsure : how.massScatter,
  };
}

export function priceHow(): HowFound {
  return { inputs: how.asEntered, method: how.price, sure: how.entered };
}
