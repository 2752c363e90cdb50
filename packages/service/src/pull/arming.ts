import { type ArmInput, type CampaignAtRig, cautions, type PieceAtRig } from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import { isMarkedUnreal } from './practice-mark.ts';

/** What stands on a rig when somebody wants to arm it. */
export interface ArmingGround {
  readonly rig: string;
  readonly isPractice: boolean;
  readonly campaigns: readonly CampaignAtRig[];
  /** Force the fixture must not see; null where none is stated. */
  readonly fixtureLimit_kN: number | null;
  /** Fall from the maximum that ends a pull, as a share of it; null where none is agreed. */
  readonly agreedDrop: number | null;
  /** Pieces that are being pulled on other rigs, as `campaign/piece`. */
  readonly piecesTaken: readonly string[];
}

export interface Cleared {
  readonly campaign: CampaignAtRig;
  readonly piece: PieceAtRig;
  readonly fixtureLimit_kN: number | null;
  readonly agreedDrop: number | null;
}

/**
 * Goes through everything that must hold before a pull. The first thing that does not is an InputError with its own code: `pull/rig-unknown`, `pull/practice-in-earnest`, `pull/piece-unknown`, `pull/piece-not-confirmed`, `pull/piece-pulled`,
 * `entry/plan-not-frozen`, `pull/certificate-not-in-force`, `pull/force-unknown`, `pull/range-unknown`, `pull/range-unfit`, `pull/fixture-limit`, `pull/operator-unknown`,
 * `pull/caution-open`.
 */
export function clearToArm(input: ArmInput, ground: ArmingGround): Cleared {
  const campaign = campaignOf(input, ground);
  const piece = pieceOf(input, campaign, ground);
  refuseOpenPlan(campaign);
  refuseCertificate(campaign, ground);
  refuseRange(piece, campaign, ground);
  refuseFixture(piece, ground);
  refuseOperator(input, campaign);
  refuseCautions(input);
  return { campaign, piece, fixtureLimit_kN: ground.fixtureLimit_kN, agreedDrop: ground.agreedDrop };
}

function refused(code: string, message: string, context: Readonly<Record<string, unknown>> = {}): InputError {
  return new InputError(code, message, context);
}

function campaignOf(input: ArmInput, { rig, isPractice, campaigns }: ArmingGround): CampaignAtRig {
  const campaign = campaigns.find((one) => one.campaign === input.campaign);
  if (!campaign)
    throw refused(
      'pull/rig-unknown',
      `Campaign ${input.campaign} does not know ${rig} as a rig. Add it to its instruments.`,
      {
        choices: campaigns.map((one) => one.campaign),
      },
    );
  if (isPractice) refuseInEarnest(campaign, rig);
  return campaign;
}

/** A practice pull may go only into a campaign that says of itself that it is not real: `pull/practice-in-earnest`. */
export function refuseInEarnest(campaign: CampaignAtRig, rig: string): void {
  if (isMarkedUnreal(campaign)) return;
  throw refused(
    'pull/practice-in-earnest',
    `What comes from ${rig} is simulated, and ${campaign.campaign} is not marked as practice or invented. Practise on a practice campaign.`,
  );
}

function pieceOf(input: ArmInput, campaign: CampaignAtRig, ground: ArmingGround): PieceAtRig {
  const piece = campaign.pieces.find((one) => one.piece === input.piece);
  if (!piece)
    throw refused('pull/piece-unknown', `Campaign ${campaign.campaign} holds no piece "${input.piece}".`, {
      piece: input.piece,
    });
  if (input.confirmed.trim().toUpperCase() !== piece.piece.toUpperCase())
    throw refused(
      'pull/piece-not-confirmed',
      `The tag reads "${input.confirmed.trim()}", the piece chosen is ${piece.piece}. Look at the tag of the piece in the rig.`,
      { piece: piece.piece, confirmed: input.confirmed },
    );
  const isTaken = ground.piecesTaken.includes(`${campaign.campaign}/${piece.piece}`);
  if (piece.isPulled || isTaken)
    throw refused('pull/piece-pulled', `Piece ${piece.piece} ${isTaken ? 'is being' : 'has been'} pulled already.`, {
      piece: piece.piece,
    });
  return piece;
}

function refuseOpenPlan({ campaign, isPlanOpen }: CampaignAtRig): void {
  if (!isPlanOpen) return;
  throw refused(
    'entry/plan-not-frozen',
    `Freeze the plan of ${campaign} in its Brief before the first pull: what was planned must be on record before a result is known.`,
  );
}

function refuseCertificate({ certificate }: CampaignAtRig, { rig }: ArmingGround): void {
  if (certificate?.isInForce) return;
  const words = certificate
    ? `certificate ${certificate.number} holds from ${certificate.calibratedOn} to ${certificate.dueOn}`
    : 'it has no certificate';
  throw refused('pull/certificate-not-in-force', `${rig} may not pull today: ${words}.`);
}

function refuseRange(piece: PieceAtRig, campaign: CampaignAtRig, { rig }: ArmingGround): void {
  const { expectedForce_kN, minimumForce_kN } = piece;
  if (expectedForce_kN === null || minimumForce_kN === null)
    throw refused(
      'pull/force-unknown',
      `Nothing says what force ${piece.piece} should hold. Give its product a claimed breaking force.`,
      { piece: piece.piece },
    );
  const { rangeMinimum_kN: least, rangeMaximum_kN: greatest } = campaign;
  if (greatest === null)
    throw refused(
      'pull/range-unknown',
      `Nothing says up to what force ${rig} is verified. Give its instrument row a range.`,
    );
  if (expectedForce_kN > greatest || minimumForce_kN < (least ?? 0))
    throw refused(
      'pull/range-unfit',
      `${piece.piece} must hold ${shown(minimumForce_kN)} kN and may reach ${shown(expectedForce_kN)} kN; ${rig} is verified from ${shown(least ?? 0)} to ${shown(greatest)} kN. Take another rig.`,
      { expectedForce_kN, rangeMinimum_kN: least, rangeMaximum_kN: greatest },
    );
}

/** What the piece may reach must not be more than its fixture bears. */
function refuseFixture({ piece, expectedForce_kN }: PieceAtRig, { rig, fixtureLimit_kN }: ArmingGround): void {
  if (fixtureLimit_kN === null || expectedForce_kN === null || expectedForce_kN <= fixtureLimit_kN) return;
  throw refused(
    'pull/fixture-limit',
    `${piece} may reach ${shown(expectedForce_kN)} kN; the fixture of ${rig} bears ${shown(fixtureLimit_kN)} kN. Take another fixture or another rig.`,
    { expectedForce_kN, fixtureLimit_kN },
  );
}

function shown(force_kN: number): string {
  return String(Number(force_kN.toPrecision(4)));
}

function refuseOperator({ operator }: ArmInput, { people, campaign }: CampaignAtRig): void {
  if (operator === null || people.some(({ person }) => person === operator)) return;
  throw refused(
    'pull/operator-unknown',
    `Campaign ${campaign} knows no "${operator}". Take one of its people, or name nobody.`,
    {
      choices: people.map(({ person }) => person),
    },
  );
}

function refuseCautions(input: ArmInput): void {
  const open = cautions.filter((caution) => !input.cautions.includes(caution));
  if (open.length > 0)
    throw refused('pull/caution-open', `Not acknowledged: ${open.join(', ')}. Acknowledge each by its name.`, { open });
}
