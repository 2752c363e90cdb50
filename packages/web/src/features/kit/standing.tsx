import type { Row } from '@provinghouse/contract';
import { type CertificateState, certificateStanding, type Verdict } from '@provinghouse/core';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { today } from '../../lib/entry/today.ts';
import { text } from '../../lib/text.ts';

const asVerdict: Readonly<Record<CertificateState, Verdict>> = {
  'in force': 'conforms',
  'due soon': 'inconclusive',
  'run out': 'does not conform',
  none: 'not judged',
};

/** How an instrument stands today, in words and with a mark. */
export function Standing({ certificates }: { readonly certificates: readonly Row<'calibrations'>[] }) {
  const day = today();
  const { state, daysLeft, certificate } = certificateStanding(certificates, day);
  const isEarly = certificate !== null && state === 'run out' && day < certificate.calibrated_on;
  return (
    <VerdictMark verdict={asVerdict[state]}>
      {isEarly ? text.kit.notYet(certificate.calibrated_on) : text.kit.state[state](daysLeft ?? 0)}
    </VerdictMark>
  );
}
