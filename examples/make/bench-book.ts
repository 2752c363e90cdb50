import type { CampaignRows, Row } from '@provinghouse/contract';
import { type BreakPosition, type Random, stream } from '@provinghouse/rig/practice';
import { drawMode, examineBreak } from './break-examination.ts';
import { gaugeLength_mm, gaugePiece } from './gauging.ts';
import type { PulledPiece } from './story.ts';
import { type Supplier, suppliers } from './suppliers.ts';
import { namedColumns } from './trace-file.ts';
import { calibrations, campaign, instruments, people } from './words.ts';
import { drawZinc, surveyZinc } from './zinc-survey.ts';

/** A pulled piece with its place in the order of pulls. */
export interface BookedPull {
  readonly pull: string;
  readonly pulledAt: string;
  readonly trace: string;
  readonly pulled: PulledPiece;
  readonly position: BreakPosition;
  readonly mode: string;
}

const minute_ms = 60_000;
const pullsPerDay = 10;
const firstPullDay = Date.UTC(2026, 2, 24, 9, 10);
const firstGaugingDay = Date.UTC(2026, 2, 9, 8, 30);

function isoTime(at: number): string {
  return new Date(at).toISOString().replace('.000Z', 'Z');
}

/** Books all pulls in an order drawn by lot, those of RIG-2 last. */
export function bookPulls(seed: number, pieces: readonly PulledPiece[]): BookedPull[] {
  const lot = stream(seed, 'order of pulls');
  const order = [
    ...lot.shuffled(pieces.filter((p) => p.rig === 'RIG-1')),
    ...lot.shuffled(pieces.filter((p) => p.rig === 'RIG-2')),
  ];
  return order.map((pulled, i) => {
    const day_ms = Math.floor(i / pullsPerDay) * 24 * 60 * minute_ms;
    const at = firstPullDay + day_ms + (i % pullsPerDay) * 22 * minute_ms + Math.floor(lot.between(0, 9)) * minute_ms;
    const { position } = pulled.history;
    return {
      pull: `P-${String(i + 1).padStart(3, '0')}`,
      pulledAt: isoTime(at),
      trace: `traces/${pulled.piece.toLowerCase()}.${pulled.story.form === 'blanks' ? 'txt' : 'csv'}`,
      pulled,
      position,
      mode: drawMode(position, stream(seed, `${pulled.piece}/mode`)),
    };
  });
}

/** All rows of the campaign. Tables that hold nothing here are empty, not left out. */
export function bookRows(seed: number, pulls: readonly BookedPull[]): CampaignRows {
  const pieces = [...pulls].map((p) => p.pulled).sort((a, b) => listOrder(a) - listOrder(b));
  const zinc = new Map(
    pieces.map((p) => [p.piece, drawZinc(p.supplier, p.links.length, stream(seed, `${p.piece}/zinc`))]),
  );
  return {
    campaign: [campaign],
    people,
    instruments,
    calibrations,
    checks: [],
    products: suppliers.map(productRow),
    samples: suppliers.flatMap((s) => sampleRows(s, stream(seed, `${s.product}/samples`))),
    custody: suppliers.flatMap((s, at) =>
      sampleRows(s, stream(seed, `${s.product}/samples`)).flatMap((row) => custodyRows(row, at)),
    ),
    pieces: pieces.map((p, i) => pieceRow(p, i, stream(seed, `${p.piece}/gauge length`))),
    gauging: pieces.flatMap((p, i) => gaugingRows(p, i, zinc.get(p.piece) ?? [], seed)),
    pulls: pulls.map(pullRow),
    breaks: pulls.flatMap((p, i) => breakRows(p, i, seed)),
    zinc: pieces.flatMap((p) =>
      surveyZinc(p.piece, p.supplier, zinc.get(p.piece) ?? [], stream(seed, `${p.piece}/zinc readings`)),
    ),
    photographs: [],
  };
}

function listOrder(pulled: PulledPiece): number {
  return suppliers.indexOf(pulled.supplier) * 10 + pulled.supplier.pieces.indexOf(pulled.story);
}

function productRow(s: Supplier): Row<'products'> {
  const { product, supplier, description, specification, grade, price_per_metre } = s;
  return {
    product,
    supplier,
    description,
    nominal_size_mm: s.size_mm,
    specification,
    grade,
    claimed_breaking_force_kN: null,
    price_per_metre,
    currency: 'EUR',
  };
}

const steel_kg_per_mm3 = 7.85e-6;
const zinc_kg_per_mm3 = 7.2e-6;

/** Two half rings and two straight legs of bar, with the upset of the weld and the zinc over all of it. */
function massPerMetre_kg(s: Supplier): number {
  const { diameter_mm: d, pitch_mm: p, innerWidth_mm: w, weldUpset_mm } = s.making;
  const bar_mm = 2 * (p - w) + Math.PI * (w + d);
  const upset_mm3 = (Math.PI / 2) * d * weldUpset_mm * d * 0.7;
  const steel_kg = ((Math.PI / 4) * d ** 2 * bar_mm + upset_mm3) * steel_kg_per_mm3;
  const zinc_kg = Math.PI * d * bar_mm * (s.zinc.mean_um / 1000) * zinc_kg_per_mm3;
  return (1000 * (steel_kg + zinc_kg)) / p;
}

function sampleRows(s: Supplier, random: Random): Row<'samples'>[] {
  return s.boughtFrom.map((bought_from, i) => {
    const length_m = Number(((i === 0 ? 1.6 : 1.1) + random.between(-0.04, 0.06)).toFixed(3));
    return {
      sample: `${s.product}-S${i + 1}`,
      product: s.product,
      received_on: i === 0 ? '2026-03-05' : random.pick(['2026-03-06', '2026-03-07']),
      received_by: 'wren',
      bought_from,
      batch_mark: s.batchMark,
      length_m,
      mass_kg: Number((length_m * massPerMetre_kg(s) * random.normal(1, 0.003)).toFixed(3)),
      condition: s.condition,
    };
  });
}

/** Received onto a tray of its own; after the cutting what is left went into the cupboard. */
function custodyRows({ sample, received_on }: Row<'samples'>, at: number): Row<'custody'>[] {
  const move = (number: number, moved_at: string, place: string): Row<'custody'> => ({
    sample,
    move: number,
    moved_at,
    place,
    by: 'wren',
    due_back_on: null,
    note: null,
  });
  return [
    move(1, `${received_on}T14:30:00Z`, `receiving shelf, tray ${at + 1}`),
    move(2, '2026-03-09T16:00:00Z', `cut into pieces; what is left in the sample cupboard, tray ${at + 1}`),
  ];
}

function pieceRow(p: PulledPiece, index: number, random: Random): Row<'pieces'> {
  const measured_mm = gaugeLength_mm(p.links) + random.normal(0, 0.05);
  return {
    piece: p.piece,
    sample: p.sample,
    links: p.links.length,
    // Every seventh was not noted at the bench, as happens; its length follows from the gauged pitch.
    gauge_length_mm: index % 7 === 5 ? null : Number(measured_mm.toFixed(1)),
    gauged_over: p.story.strippedForGauging ? 'bare steel' : 'zinc',
    note: p.story.strippedForGauging
      ? 'legs and welds of links 1, 3 and 5 stripped in inhibited acid before gauging, link 2 left in its zinc'
      : null,
  };
}

function gaugingRows(p: PulledPiece, index: number, zinc_um: readonly number[], seed: number): Row<'gauging'>[] {
  const day_ms = Math.floor(index / 10) * 24 * 60 * minute_ms;
  const first = index % 2 === 0 ? 'wren' : 'plover';
  const other = first === 'wren' ? 'plover' : 'wren';
  return gaugePiece(
    {
      piece: p.piece,
      links: p.links,
      zinc_um,
      stripped: p.story.strippedForGauging ?? false,
      by: first,
      again: index % 5 === 0 || index % 5 === 3 ? other : null,
      startsAt: firstGaugingDay + day_ms + (index % 10) * 25 * minute_ms,
    },
    stream(seed, `${p.piece}/gauging`),
  );
}

function pullRow({ pull, pulledAt, trace, pulled, position }: BookedPull): Row<'pulls'> {
  const inGrip = position === 'in grip';
  return {
    pull,
    piece: pulled.piece,
    rig: pulled.rig,
    operator: 'wren',
    pulled_at: pulledAt,
    trace,
    ...namedColumns(pulled.story.form),
    extension_column: null,
    panel_maximum_kN: null,
    panel_uncertainty_kN: null,
    valid: !inGrip,
    invalid_reason: inGrip ? 'parted in the upper jaw at the tooth mark, after the jaw had slipped' : null,
    note: pulled.story.note ?? null,
  };
}

function breakRows({ pull, pulled, position, mode }: BookedPull, index: number, seed: number): Row<'breaks'>[] {
  const weldSuspected = pulled.supplier.product === 'BIRCH-8';
  const broken = {
    pull,
    link: pulled.history.partedLink,
    position,
    mode,
    readTwice: weldSuspected || (index % 5 !== 1 && index % 5 !== 4),
  };
  return examineBreak(broken, stream(seed, `${pulled.piece}/break`));
}
