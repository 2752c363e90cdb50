import { rowWith } from '@provinghouse/contract';
import { post, seeded } from './gauging-bench.ts';

/** The instrument that {@link furnishBench} enters. */
export const checkedInstrument = 'CAL-7';

/** Enters a person and a calliper into the book of the bench, with its certificate and a run of check readings of which the last drifts; all invented. */
export async function furnishBench(address: string): Promise<void> {
  const next = seeded(5);
  const readings = Array.from({ length: 26 }, (_, at) => {
    const drift = at < 20 ? 0 : 0.006 * (at - 19);
    return rowWith('checks', {
      instrument: checkedInstrument,
      checked_at: new Date(Date.UTC(2026, 0, 5 + 7 * at, 8)).toISOString(),
      reference: 'gauge block 20 mm',
      reference_value: 20,
      reading: Math.round(1000 * (20 + 0.012 * (next() - 0.5) + drift)) / 1000,
      by: 'wren',
    });
  });
  await post(`${address}/api/bench/records`, {
    who: 'wren',
    rows: {
      people: [rowWith('people', { person: 'wren', name: 'Wren (invented)', role: 'gauging and pulls' })],
      instruments: [
        rowWith('instruments', {
          instrument: checkedInstrument,
          kind: 'calliper',
          description: '150 mm digital calliper (invented)',
          unit: 'mm',
          resolution: 0.01,
          range_minimum: 0,
          range_maximum: 150,
        }),
      ],
      calibrations: [
        rowWith('calibrations', {
          calibration: 'C-1007',
          instrument: checkedInstrument,
          calibrated_on: '2026-01-02',
          due_on: '2027-01-02',
          expanded_uncertainty: 0.02,
          coverage_factor: 2,
        }),
      ],
      checks: readings,
    },
  });
}
