import type { BookedPull } from './bench-book.ts';
import { demoSeed } from './story.ts';

/** What the simulation knows and the bench does not: for tests to hold readings against. Times are those of the trace. */
export function truthOf(pulls: readonly BookedPull[]): object {
  return {
    about:
      'Invented demonstration data: the true course of each simulated pull, before transducer, recorder and callipers. Not measured on any chain.',
    seed: demoSeed,
    pieces: [...pulls].sort((a, b) => (a.pulled.piece < b.pulled.piece ? -1 : 1)).map(truthOfPull),
  };
}

function truthOfPull({ pull, trace, pulled, position, mode }: BookedPull): object {
  const { history, transducer, recording, links, story } = pulled;
  const at = (step: number) => rounded(step * history.step_s, 2);
  const force = (step: number) => rounded(history.force_kN[step] ?? 0, 3);
  const recordEnds_s = recording.time_s.at(-1) ?? 0;
  const maximum_kN = force(history.maximumStep);
  const shown_kN = maximum_kN * (1 + transducer.gainError) + transducer.zero_kN;
  return {
    pull,
    piece: pulled.piece,
    trace,
    form: story.form,
    rig: pulled.rig,
    sampleRate_Hz: story.rate_Hz,
    samples: recording.time_s.length,
    maximumForce_kN: maximum_kN,
    timeAtMaximum_s: at(history.maximumStep),
    partingForce_kN: force(history.partedStep),
    timeAtParting_s: at(history.partedStep),
    recordEnds_s: rounded(recordEnds_s, 2),
    recordShowsParting: recordEnds_s > history.partedStep * history.step_s,
    clipped: shown_kN > transducer.rangeMaximum_kN,
    elongation_pct: rounded(history.elongation_pct, 2),
    stiffnessOfLinks_kN_per_mm: rounded(history.stiffness_kN_per_mm, 2),
    brokenLink: history.partedLink,
    position,
    mode,
    barDiameter_mm: links.map((link) => rounded(link.diameter_mm, 3)),
    pitch_mm: links.map((link) => rounded(link.pitch_mm, 3)),
    zeroForce_kN: rounded(transducer.zero_kN, 4),
    gainError: transducer.gainError,
    noise_kN: transducer.noise_kN,
    spikes: pulled.spikes.map((s) => ({ time_s: rounded(s.time_s, 2), force_kN: rounded(s.force_kN, 2) })),
    jumps: history.jumps.map((j) => ({ kind: j.kind, time_s: rounded(j.time_s, 2), force_kN: rounded(j.force_kN, 2) })),
    pauses: pulled.pauses.map((p) => ({
      from_s: rounded(p.from_s, 2),
      to_s: rounded(p.to_s, 2),
      from_kN: rounded(p.from_kN, 2),
    })),
  };
}

function rounded(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}
