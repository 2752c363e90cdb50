import type { Row } from '@provinghouse/contract';

/** What the people of the demonstration wrote: brief, kit, names. All invented. */
export const campaign: Row<'campaign'> = {
  campaign: 'SALLOW-REACH',
  title: '8 mm and 10 mm galvanised chain for mussel mooring bridles',
  question:
    'We hang each long-line on two chain bridles and lost three in one winter. Of the six galvanised chains we can buy, which are as strong as their mark says, which of them is better for its price, and how will each one fail?',
  client: "The Sallow Reach Mussel Growers' Co-operative",
  laboratory: 'Test bench in the net loft, Sallow Reach',
  opened_on: '2026-03-02',
  decision_rule: 'guarded acceptance',
  coverage_factor: 2,
  method:
    'Five free links between jaws, the end links gripped over their full width. Diameters of bar and weld are read over the zinc unless the piece says bare steel; zinc is read on link 2 before the pull. Slack is drawn in by hand, table travel counted from there, no preload hold and no proof pull beforehand. Table speed is set by hand on the valve: slow while the chain takes load, then about 30 mm/min (8 mm) or 37 mm/min (10 mm), never turned back. The pull ends at parting and not before. Order of pulls drawn by lot; the last four went on RIG-2 because the pump of RIG-1 ran hot. A piece that parts in the jaw is kept, listed and left out of every mean. The recordings were written out by two people in whatever form lay nearest; they are left as they were.',
  sampling:
    'Two lengths of each product, bought as ordinary customers at different times, paid for, supplier not told. Three pieces cut from the first length, two from the second, at least one link left out between pieces. Thirty pulls say something of these twelve lengths; they say nothing of what a supplier ships next year.',
  table_speed_min_mm_per_min: 10,
  table_speed_max_mm_per_min: 60,
  marking: 'invented demonstration data',
  pieces_per_product: null,
  order_seed: null,
  blinding: null,
  plan_frozen_at: null,
  unblinded_at: null,
};

export const people: readonly Row<'people'>[] = [
  { person: 'wren', name: 'Wren (invented)', role: 'buying, gauging, pulls' },
  { person: 'plover', name: 'Plover (invented)', role: 'gauging, zinc, first reader of breaks' },
  { person: 'teal', name: 'Teal (invented)', role: 'second reader of breaks, told neither supplier nor force' },
];

function instrument(
  row: Pick<Row<'instruments'>, 'instrument' | 'kind' | 'unit' | 'resolution'> & Partial<Row<'instruments'>>,
) {
  return {
    description: null,
    range_minimum: null,
    range_maximum: null,
    class: null,
    extension_class: null,
    compliance_mm_per_kN: null,
    ...row,
  };
}

export const instruments: readonly Row<'instruments'>[] = [
  instrument({
    instrument: 'RIG-1',
    kind: 'rig',
    description: 'hydraulic rig, 100 kN, table speed by hand valve; stretch of frame and jaws found on a solid bar',
    unit: 'kN',
    resolution: 0.01,
    range_minimum: 10,
    range_maximum: 100,
    class: 1,
    extension_class: 1,
    compliance_mm_per_kN: 0.011,
  }),
  instrument({
    instrument: 'RIG-2',
    kind: 'rig',
    description: 'older hydraulic rig, recorder ends at 70 kN; stretch of frame and jaws never measured',
    unit: 'kN',
    resolution: 0.02,
    range_minimum: 7,
    range_maximum: 70,
    class: 1,
    extension_class: 2,
  }),
  instrument({
    instrument: 'CAL-1',
    kind: 'calliper',
    description: '150 mm digital calliper',
    unit: 'mm',
    resolution: 0.01,
    range_minimum: 0,
    range_maximum: 150,
  }),
  instrument({
    instrument: 'CAL-2',
    kind: 'calliper',
    description: '300 mm digital calliper, for lengths over links',
    unit: 'mm',
    resolution: 0.01,
    range_minimum: 0,
    range_maximum: 300,
  }),
  instrument({
    instrument: 'COAT-1',
    kind: 'coating gauge',
    description: 'magnetic gauge with a V foot, zeroed and spanned on a stripped bar of each size',
    unit: 'um',
    resolution: 1,
    range_minimum: 0,
    range_maximum: 500,
  }),
  instrument({
    instrument: 'BAL-1',
    kind: 'balance',
    description: '15 kg bench balance',
    unit: 'kg',
    resolution: 0.001,
    range_maximum: 15,
  }),
  instrument({
    instrument: 'TAPE-1',
    kind: 'tape',
    description: '5 m steel tape',
    unit: 'mm',
    resolution: 1,
    range_maximum: 5000,
  }),
];

export const calibrations: readonly Row<'calibrations'>[] = [
  certificate('C-2025-118', 'RIG-1', '2025-11-18', '2026-11-18', null),
  certificate('C-2025-031', 'RIG-2', '2025-04-02', '2026-04-02', null),
  certificate('C-2026-004', 'CAL-1', '2026-01-12', '2027-01-12', 0.02),
  certificate('C-2026-005', 'CAL-2', '2026-01-12', '2027-01-12', 0.03),
  certificate('C-2025-102', 'COAT-1', '2025-10-06', '2026-10-06', 3),
  certificate('C-2025-077', 'BAL-1', '2025-08-20', '2026-08-20', 0.002),
  certificate('C-2025-078', 'TAPE-1', '2025-08-20', '2027-08-20', 0.6),
];

/** A rig states its class on its certificate, the others an expanded uncertainty with k = 2. */
function certificate(calibration: string, instrument: string, calibrated_on: string, due_on: string, U: number | null) {
  return {
    calibration,
    instrument,
    calibrated_on,
    due_on,
    expanded_uncertainty: U,
    coverage_factor: U === null ? null : 2,
  };
}
