import type { CampaignAtRig, PieceAtRig, RigDesk } from '@provinghouse/contract';
import { text } from '../../lib/text.ts';
import { Check } from './check.tsx';

const words = text.rig.arming;

const kN = (force_kN: number) => `${Number(force_kN.toPrecision(4))}\u00a0kN`;
const speed = (mm_per_min: number) => `${mm_per_min}\u00a0mm/min`;

/** What the record and Kit say of the rig and the piece: certificate, range, fixture, window of speed, agreed drop. */
export function ArmingFacts({
  desk,
  campaign,
  piece,
}: {
  readonly desk: RigDesk;
  readonly campaign: CampaignAtRig;
  readonly piece: PieceAtRig | null;
}) {
  const { certificate, tableSpeedLimits_mm_per_min: window } = campaign;
  return (
    <dl className="arming-facts">
      <dt>{words.certificate}</dt>
      <dd>
        {certificate ? words.certificateWords(certificate.number, certificate.dueOn) : words.noCertificate}
        <Check
          holds={certificate?.isInForce === true}
          words={certificate?.isInForce ? words.inForce : words.notInForce}
        />
      </dd>
      <dt>{words.range}</dt>
      <dd>
        {campaign.rangeMaximum_kN === null
          ? words.rangeUnknown
          : words.rangeWords(kN(campaign.rangeMinimum_kN ?? 0), kN(campaign.rangeMaximum_kN))}
        {piece ? <RangeFit campaign={campaign} piece={piece} /> : null}
      </dd>
      {desk.fixtureLimit_kN === null ? null : (
        <>
          <dt>{words.fixture}</dt>
          <dd>
            {words.fixtureWords(kN(desk.fixtureLimit_kN))}
            <FixtureFit limit_kN={desk.fixtureLimit_kN} expected_kN={piece?.expectedForce_kN ?? null} />
          </dd>
        </>
      )}
      <dt>{words.speed}</dt>
      <dd>{window ? words.speedWords(speed(window[0]), speed(window[1])) : words.speedFree}</dd>
      {desk.agreedDrop === null ? null : (
        <>
          <dt>{words.agreedDrop}</dt>
          <dd>{words.agreedDropWords(`${Number((100 * desk.agreedDrop).toPrecision(3))}\u00a0%`)}</dd>
        </>
      )}
    </dl>
  );
}

function RangeFit({ campaign, piece }: { readonly campaign: CampaignAtRig; readonly piece: PieceAtRig }) {
  const { minimumForce_kN: minimum, expectedForce_kN: expected } = piece;
  if (minimum === null || expected === null) return <Check holds={false} words={words.expectedUnknown} />;
  const fits = expected <= (campaign.rangeMaximum_kN ?? 0) && minimum >= (campaign.rangeMinimum_kN ?? 0);
  return (
    <>
      <span className="line soft">{words.expected(kN(minimum), kN(expected))}</span>
      <Check holds={fits} words={fits ? words.fits : words.unfit} />
    </>
  );
}

function FixtureFit({ limit_kN, expected_kN }: { readonly limit_kN: number; readonly expected_kN: number | null }) {
  if (expected_kN === null) return null;
  const fits = expected_kN <= limit_kN;
  return <Check holds={fits} words={fits ? words.fits : words.unfit} />;
}
