/** A column the reader took for a signal. */
export interface ColumnChoice {
  readonly name: string;
  readonly unit: string;
  /** Why this column and this unit, in words. */
  readonly because: string;
}

export interface TraceColumns {
  readonly time: ColumnChoice | null;
  readonly force: ColumnChoice;
  readonly table: ColumnChoice | null;
  readonly extension: ColumnChoice | null;
}

/** What happened on the way up. A dip that is regained is an event, never an end. */
export interface TraceEvent {
  readonly kind: 'dip' | 'pause' | 'plateau at range limit' | 'gap' | 'repeat' | 'slip' | 'parted' | 'end of record';
  readonly time_s: number;
  readonly force_kN: number;
  readonly drop_kN: number | null;
  /** True when the force later rose above its value before the drop; null where the question does not arise. */
  readonly regained: boolean | null;
}

export interface Interval {
  readonly lower: number;
  readonly upper: number;
}

/** What one trace says. Absent numbers are null, never 0 and never NaN. Units stand in the names. */
export interface TraceReading {
  readonly columns: TraceColumns;
  readonly samples: number;
  readonly duration_s: number | null;
  readonly sampleRate_Hz: number | null;
  readonly zeroForce_kN: number | null;
  readonly resolution_kN: number | null;
  readonly noise_kN: number | null;
  readonly maximumForce_kN: number | null;
  /** Standard uncertainty of the maximum (class, resolution, noise at the peak, sampling); null when none can be had. */
  readonly maximumForceUncertainty_kN: number | null;
  /** True when the record is clipped, stops before parting or has a gap at the maximum: a censored value. */
  readonly maximumIsAtLeast: boolean;
  readonly timeAtMaximum_s: number | null;
  readonly parted: boolean;
  readonly partingForce_kN: number | null;
  readonly timeAtParting_s: number | null;
  readonly stiffness_kN_per_mm: number | null;
  readonly stiffnessInterval95_kN_per_mm: Interval | null;
  readonly kneeForce_kN: number | null;
  readonly tableSpeed_mm_per_min: number | null;
  readonly forceRate_kN_per_s: number | null;
  readonly extensionAtMaximum_mm: number | null;
  readonly extensionAtParting_mm: number | null;
  readonly plasticExtension_mm: number | null;
  readonly totalUltimateElongation_pct: number | null;
  readonly energyToMaximum_J: number | null;
  readonly energyToParting_J: number | null;
  readonly meanStressAtMaximum_N_per_mm2: number | null;
  readonly stressRate_N_per_mm2_per_s: number | null;
  /** Share of the loaded time with the table speed or force rate inside the method's window; null without a window. */
  readonly shareInsideRateLimits: number | null;
  readonly spikes: readonly { readonly time_s: number; readonly force_kN: number }[];
  readonly events: readonly TraceEvent[];
  readonly valid: boolean;
  readonly notes: readonly string[];
  /** End of the flat start; null when there is none. */
  readonly timeAtEndOfSlack_s?: number | null;
  /** Travel as recorded at which the elastic line meets zero force; extensions count from here. */
  readonly travelOrigin_mm?: number | null;
  /** The signal that stiffness, extensions and energies come from. */
  readonly travelFrom?: 'extension' | 'table' | null;
}
