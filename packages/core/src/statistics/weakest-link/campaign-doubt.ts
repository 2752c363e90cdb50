import type { BreakModeFinding, BreakModes } from './break-mode.ts';
import { coverageDoubts } from './coverage-doubt.ts';
import { weibullGoodness } from './goodness-of-fit.ts';
import { compareLengthModels } from './length-models.ts';
import { isUnread, type PulledPiece } from './piece.ts';

/** Everything that should make a reader careful, most serious first. */
export function campaignDoubts(
  pieces: readonly PulledPiece[],
  modes: BreakModes,
  given: { readonly pitch_mm: number; readonly atZero: number },
): string[] {
  const findings = modes.seen.map(({ finding }) => finding);
  return [
    unitDoubt(pieces, given.pitch_mm),
    given.atZero > 0 ? `${given.atZero} pulls with a force of zero were left out.` : null,
    pieces.length < 3 ? `Only ${pieces.length} ${pieces.length === 1 ? 'piece was' : 'pieces were'} pulled.` : null,
    spreadDoubt(pieces),
    unreadDoubt(pieces),
    ...findings.map(modeDoubt),
    unseenDoubt(modes),
    lengthDoubt(pieces, findings),
    goodnessDoubt(pieces, findings),
    ...coverageDoubts(pieces, modes),
  ].filter((doubt) => doubt !== null);
}

/** Mean stress in both legs that steel chain reaches at breaking, N/mm2, with room on both sides; bar diameter between pitch/6 and pitch/2. */
const LEAST_STRESS = 30;
const GREATEST_STRESS = 5000;

/** A force a thousand times too great or too small shows against the pitch: a link of that size could not bear it, or would fall apart. */
function unitDoubt(pieces: readonly PulledPiece[], pitch_mm: number): string | null {
  const sorted = pieces.map((piece) => piece.force_kN).sort((a, b) => a - b);
  const middle = sorted[sorted.length >> 1] ?? 0;
  const most = (GREATEST_STRESS * 2 * Math.PI * (pitch_mm / 2) ** 2) / 4 / 1000;
  const least = (LEAST_STRESS * 2 * Math.PI * (pitch_mm / 6) ** 2) / 4 / 1000;
  if (middle > most)
    return `Forces near ${middle.toPrecision(3)} kN are beyond any steel at a pitch of ${pitch_mm} mm: were they in N?`;
  if (middle < least)
    return `Forces near ${middle.toPrecision(3)} kN are hardly a load at a pitch of ${pitch_mm} mm: were they in MN or t?`;
  return null;
}

function spreadDoubt(pieces: readonly PulledPiece[]): string | null {
  const forces = pieces.map((piece) => piece.force_kN);
  const least = Math.min(...forces);
  const greatest = Math.max(...forces);
  if (greatest > 50 * least)
    return `Forces from ${least.toPrecision(3)} to ${greatest.toPrecision(3)} kN in one product: two units may be mixed.`;
  if (pieces.length > 1 && greatest === least)
    return 'All forces are equal: the scatter is below the resolution, and only the assumed shape speaks of it.';
  return null;
}

function unreadDoubt(pieces: readonly PulledPiece[]): string | null {
  const unread = pieces.filter(isUnread).length;
  if (unread === 0) return null;
  const all = pieces.every((piece) => piece.isAtLeast || piece.mode === null);
  return all
    ? 'No break was read: all breaks are taken as one mode, and a weak mode that long chain would show is hidden.'
    : `${unread} breaks were not read and are shared out among the modes as the others are.`;
}

function modeDoubt(mode: BreakModeFinding): string | null {
  if (mode.likelihood === null) return `${mode.mode}: ${mode.reason}; its law rests on the assumed shape.`;
  if (mode.breaks < 3)
    return `${mode.mode}: ${mode.breaks === 1 ? 'one break' : `${mode.breaks} breaks`}; its shape is assumed rather than measured.`;
  return null;
}

function unseenDoubt(modes: BreakModes): string | null {
  if (modes.unseen.length === 0) return null;
  const names = modes.unseen.map(({ finding }) => (finding.mode === 'any' ? 'any mode' : finding.mode)).join(', ');
  return `No piece broke in ${names}: so few links cannot rule it out, and the bounds allow for it on the assumed shape.`;
}

/** The weakest-link law itself can be tested only with pieces of different lengths. */
function lengthDoubt(pieces: readonly PulledPiece[], modes: readonly BreakModeFinding[]): string | null {
  const lengths = new Set(pieces.map((piece) => piece.links));
  if (lengths.size < 2) {
    const [links] = lengths;
    return `All pieces have ${links} ${links === 1 ? 'link' : 'links'}: that longer chain is weaker by the weakest-link law is assumed, not seen.`;
  }
  for (const { mode } of modes) {
    const test = compareLengthModels(pieces, mode === 'any' ? null : mode).againstPower;
    if (test && test.pValue < 0.05) {
      return `Breaks in ${mode} do not fall with the number of links as the weakest link would have it (p = ${test.pValue.toPrecision(2)}): do not carry them to other lengths by this law.`;
    }
  }
  return null;
}

function goodnessDoubt(pieces: readonly PulledPiece[], modes: readonly BreakModeFinding[]): string | null {
  const [only] = modes;
  if (!only || modes.length > 1) return null;
  const goodness = weibullGoodness(pieces, only.likelihood);
  if (!goodness || goodness.significance >= 0.05) return null;
  return `The forces do not look like one Weibull law (Anderson-Darling ${goodness.andersonDarling.toFixed(2)}, significance ${goodness.significance.toPrecision(2)}): several sorts of link may be mixed.`;
}
