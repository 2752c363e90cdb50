/** The figures a split is told from. */
interface SplitFigures {
  readonly isAtLeast: boolean;
  readonly sizeFactor: number;
  readonly steelFactor: number | null;
  readonly totalFactor: number | null;
  readonly honestGrade: number;
  readonly standardGrade: number | null;
}

/** Under this a bar is told as of nominal area: gauging does not resolve it. */
const slight = 0.005;

/** From this much over the nominal area a bar is called fat; tolerances on diameter reach four times as far. */
const fat = 0.02;

/** The split in one or two plain sentences, for findings and replies to suppliers. Percentages to 0.1. */
export function splitSentence(figures: SplitFigures): string {
  const { steelFactor, totalFactor, sizeFactor } = figures;
  const bears = gradeWords(figures);
  if (steelFactor === null || totalFactor === null) {
    return `The bar is ${sizeWords(sizeFactor)}. ${bears}`;
  }
  const atLeast = figures.isAtLeast ? 'at least ' : '';
  const margin = totalFactor - 1;
  const standing =
    Math.abs(margin) < slight / 10
      ? `${figures.isAtLeast ? 'At least at' : 'At'} the minimum`
      : margin > 0
        ? capital(`${atLeast}${percent(margin)} above the minimum`)
        : `${percent(-margin)} below the minimum${figures.isAtLeast ? ' when the record ended' : ''}`;
  return `${standing}: ${reason({ sizeFactor, steelFactor, margin, atLeast })}. ${bears}`;
}

function reason(split: {
  readonly sizeFactor: number;
  readonly steelFactor: number;
  readonly margin: number;
  readonly atLeast: string;
}): string {
  const { sizeFactor, steelFactor, margin, atLeast } = split;
  const size = sizeFactor - 1;
  const steel = steelFactor - 1;
  const steelWords =
    Math.abs(steel) < slight / 10
      ? `the steel itself is ${atLeast}at its grade`
      : steel > 0
        ? `the steel itself is ${atLeast}${percent(steel)} above its grade`
        : `the steel itself is ${percent(-steel)} below its grade${atLeast === '' ? '' : ' as far as the record goes'}`;
  if (margin > 0 && steel < 0 && size >= slight)
    return `strong only because its bar is fat, ${percent(size)} over the nominal area; ${steelWords}`;
  if (margin > 0 && size >= fat) {
    return `strong partly because its bar is fat, ${percent(size)} over the nominal area; ${steelWords}`;
  }
  if (margin < 0 && size < -slight && steel >= 0) {
    return `weak because its bar is thin, ${percent(-size)} under the nominal area; ${steelWords}`;
  }
  return `the bar is ${sizeWords(sizeFactor)}; ${steelWords}`;
}

function gradeWords({ honestGrade, standardGrade, isAtLeast }: SplitFigures): string {
  const atLeast = isAtLeast ? 'at least ' : '';
  const number = Number(honestGrade.toFixed(1));
  const standard =
    standardGrade === null ? 'less than any standard grade' : `${atLeast}standard grade ${standardGrade}`;
  return `Over its measured steel it bears ${atLeast}grade ${number}, ${isAtLeast && standardGrade === null ? 'no standard grade shown' : standard}.`;
}

function sizeWords(sizeFactor: number): string {
  const size = sizeFactor - 1;
  if (Math.abs(size) < slight) return 'of nominal area';
  return size > 0 ? `${percent(size)} over the nominal area` : `${percent(-size)} under the nominal area`;
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
