import type {
  BreakReading,
  BreakTally,
  CharacteristicValue,
  DecisionRule,
  GaugingReading,
  Comparison as GroupComparison,
  GrubbsTest,
  Judgement,
  Kappa,
  LongChainFinding,
  MeanInterval,
  MeasuredValue,
  NormalityTest,
  Quantity,
  Specification,
  StrengthSplit,
  Summary,
  ToleranceBound,
  TraceReading,
  ValueForMoney,
  Verdict,
  ZincSurvey,
} from '@provinghouse/core';
import type { Row } from './package/tables.ts';

/** One pull as judged: what it may be used for, and why. */
export interface PullFinding {
  readonly pull: string;
  readonly rig: string;
  readonly operator: string | null;
  readonly pulledAt: string | null;
  readonly trace: string | null;
  readonly traceSha256: string | null;
  readonly reading: TraceReading | null;
  /** The breaking force it shows; null when it shows none. */
  readonly maximum: MeasuredValue | null;
  readonly elongation: MeasuredValue | null;
  /** `value`: counts everywhere; `at least`: a censored value; `none`: listed, never averaged. */
  readonly use: 'value' | 'at least' | 'none';
  /** Why it is less than a plain value; empty when it is one. */
  readonly reasons: readonly string[];
  readonly note: string | null;
}

export interface PieceFinding {
  readonly piece: string;
  readonly product: string;
  readonly sample: string;
  readonly links: number;
  readonly gaugeLength_mm: number;
  readonly gaugeLengthOrigin: string;
  readonly gauging: GaugingReading | null;
  readonly gaugingReadings: readonly Row<'gauging'>[];
  readonly pull: PullFinding | null;
  /** Pulls of this piece beyond the one judged (proof pulls, repeats): listed, not judged. */
  readonly otherPulls: readonly string[];
  readonly split: StrengthSplit | null;
  readonly breaks: readonly BreakReading[];
  readonly examinersDiffer: boolean;
  readonly zinc: ZincSurvey | null;
  readonly judgements: readonly Judgement[];
  readonly standing: Verdict;
  readonly note: string | null;
}

/** One requirement over all pieces of a product. */
export interface ProductJudgement {
  readonly quantity: Quantity;
  readonly verdict: Verdict;
  readonly counts: Readonly<Record<Verdict, number>>;
  /** Pieces that decide it: the failures, else the doubts. */
  readonly deciding: readonly string[];
  readonly sentence: string;
}

/** A summary together with what was left out of it, and why. */
export interface ProductSummary extends Summary {
  readonly unit: string;
  /** Pieces whose value is only "at least": not in the mean. */
  readonly atLeast: readonly { readonly piece: string; readonly value: number }[];
  readonly excluded: readonly { readonly piece: string; readonly reason: string }[];
  /** What the figures say, in a sentence for a reader who is no statistician. */
  readonly sentence: string;
}

/** A requirement on a whole product rather than on its pieces, decided and told. */
export interface ProductDecision {
  readonly verdict: Verdict;
  readonly sentence: string;
  readonly method: string;
  readonly doubts: readonly string[];
}

/** What may be inferred on the breaking force of a product from its counted pieces, and where nothing may, why. */
export interface ProductInference {
  readonly mean: MeanInterval;
  /** Force that 95 % of such pieces exceed, with 95 % confidence. */
  readonly tolerance: ToleranceBound;
  readonly characteristic: CharacteristicValue;
  /** The value farthest out: shown, never dropped. */
  readonly outlier: GrubbsTest;
  readonly normality: NormalityTest;
  /** The mean of the product against the minimum breaking force; null where there is no minimum. */
  readonly meanDecision: ProductDecision | null;
  /** 95 % of all such pieces against it, with 95 % confidence. */
  readonly boundDecision: ProductDecision | null;
}

export interface ProductFinding {
  readonly product: string;
  readonly supplier: string;
  readonly description: string | null;
  readonly nominalSize_mm: number;
  readonly specification: Specification;
  readonly claimedBreakingForce_kN: number | null;
  readonly pricePerMetre: number | null;
  readonly currency: string | null;
  readonly massPerMetre_kg_per_m: number | null;
  readonly pieces: readonly string[];
  readonly judgements: readonly ProductJudgement[];
  readonly standing: Verdict;
  readonly breakingForce: ProductSummary;
  readonly elongation: ProductSummary;
  /** Mean stress at the maximum over the gauged steel area, N/mm2. */
  readonly steelStress: ProductSummary;
  readonly inference: ProductInference;
  /** What the pieces say about a long chain, by break mode; null when no piece shows a force. */
  readonly longChain: LongChainFinding | null;
  /** The split of the mean piece; null without both areas and a force. */
  readonly split: StrengthSplit | null;
  readonly breaks: readonly BreakTally[];
  readonly zinc: ZincSurvey | null;
  /** Strength above the minimum: mean breaking force over the limit, less one, in per cent. */
  readonly marginOverMinimum_pct: number | null;
  readonly forcePerMass_kN_m_per_kg: number | null;
  readonly forcePerPrice_kN_m: number | null;
}

/** Products of one nominal size side by side. A difference within the scatter is called one. */
export interface Comparison {
  readonly nominalSize_mm: number;
  readonly products: readonly string[];
  readonly sentences: readonly string[];
  /** Differences of the mean breaking forces with joint limits; null below two products. */
  readonly statistics: GroupComparison | null;
  /** Force for its mass and price, and margin over the specification, with uncertainty. */
  readonly worth: ValueForMoney;
}

/** How far two or more readers of the breaks agree beyond chance. */
export interface ReaderAgreement {
  readonly readers: readonly string[];
  readonly position: Kappa;
  readonly mode: Kappa;
}

/** The whole finding of a campaign: everything the screens and the report show, and nothing they compute. */
export interface CampaignFinding {
  readonly campaign: Row<'campaign'>;
  readonly rule: DecisionRule;
  readonly ruleSentence: string;
  readonly people: readonly Row<'people'>[];
  readonly instruments: readonly Row<'instruments'>[];
  readonly calibrations: readonly Row<'calibrations'>[];
  readonly samples: readonly Row<'samples'>[];
  readonly products: readonly ProductFinding[];
  readonly pieces: readonly PieceFinding[];
  readonly comparisons: readonly Comparison[];
  /** Null when no break was read twice. */
  readonly agreement: ReaderAgreement | null;
  /** The answer in a few sentences, product by product. */
  readonly answers: readonly string[];
  readonly photographs: readonly Row<'photographs'>[];
  /** What this finding cannot say. */
  readonly limitsOfTheFinding: readonly string[];
  /** Doubts found on the way: calibration out of date on the day, forces outside the verified range, limits from memory ... */
  readonly doubts: readonly string[];
}

/** A campaign in the list. */
export interface CampaignSummary {
  readonly campaign: string;
  readonly title: string;
  readonly question: string;
  readonly client: string | null;
  readonly openedOn: string;
  readonly marking: string | null;
  readonly products: number;
  readonly pieces: number;
  readonly pulled: number;
  /** How many products stand where; null while the campaign is being judged. */
  readonly standing: Readonly<Record<Verdict, number>> | null;
}

/** A page of the campaigns of a record, by their codes. */
export interface CampaignList {
  readonly campaigns: readonly CampaignSummary[];
  /** What to ask the next page with, as `after`; null at the end. */
  readonly next: string | null;
}

/** A pull's curve for drawing: thinned so that extremes stay. Arrays have one length; null where the signal is missing or has a gap. */
export interface PullCurve {
  readonly pull: string;
  readonly time_s: readonly number[] | null;
  readonly force_kN: readonly number[];
  readonly table_mm: readonly (number | null)[] | null;
  readonly extension_mm: readonly (number | null)[] | null;
}
