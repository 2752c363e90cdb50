import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { seededRandom } from '../packages/core/src/statistics/random.ts';
import {
  bootstrapForces,
  fitWeibull,
  longChain,
  modeRecord,
  type PulledPiece,
} from '../packages/core/src/statistics/weakest-link/index.ts';
import { drawCampaign, productLaws } from './coverage-truth.ts';

const RESAMPLES = 2000;
const PIECES = 30;
const PEER_FITS = 100;
const PRODUCTS = 13;
/** Debian's Python, whose package python3-scipy is the peer. */
const PYTHON = '/usr/bin/python3';

interface PeerRun {
  readonly seconds: number;
  readonly shapes: readonly number[];
  readonly scales: readonly number[];
  readonly scipy: string;
}

const laws = productLaws({ pieces: PIECES, scatter_pct: 4, weldShare: 0.3 });

/** Seconds of one bootstrap of two competing modes, and the fits in it. */
function bootstrapRun(pieces: readonly PulledPiece[]): { readonly seconds: number; readonly fits: number } {
  const records = ['bar', 'weld'].map((mode) => modeRecord(pieces, mode));
  const fits = records.map((record) => fitWeibull(record).fit);
  const { links, logReference } = records[0] ?? modeRecord(pieces, null);
  const started = performance.now();
  const { used } = bootstrapForces({
    links,
    limits: links.map(() => Number.POSITIVE_INFINITY),
    shapes: Float64Array.from(fits, (fit) => fit?.shape ?? Number.NaN),
    logRates: Float64Array.from(fits, (fit) =>
      fit ? fit.shape * (logReference - Math.log(fit.scale_kN)) : Number.NaN,
    ),
    targets: Float64Array.from([42, 417, 4167], (count) => Math.log(-Math.log(0.95) / count)),
    resamples: RESAMPLES,
    seed: 1,
  });
  return { seconds: (performance.now() - started) / 1000, fits: 2 * used };
}

function peerRun(samples: readonly (readonly number[])[]): PeerRun | null {
  const script = join(import.meta.dirname, 'weakest-link-peer.py');
  const done = spawnSync(PYTHON, [script], { input: JSON.stringify(samples), encoding: 'utf8' });
  return done.status === 0 ? JSON.parse(done.stdout) : null;
}

/** Greatest relative difference between our fits and the peer's. */
function farthest(samples: readonly (readonly number[])[], peer: PeerRun): number {
  return samples.reduce((most, sample, k) => {
    const pieces = sample.map((force_kN) => ({ links: 1, force_kN, mode: 'bar', isAtLeast: false }));
    const { fit } = fitWeibull(modeRecord(pieces, 'bar'));
    const away = (ours: number | undefined, theirs: number | undefined) => Math.abs((ours ?? 0) / (theirs ?? 1) - 1);
    return Math.max(most, away(fit?.shape, peer.shapes[k]), away(fit?.scale_kN, peer.scales[k]));
  }, 0);
}

/**
 * A bootstrap of 2000 resamples with two competing modes, 30 pieces, and the long-chain findings of 13 products of 5 pieces; beside them SciPy's
 * Weibull fit of samples of the same size. Prints one line; a difference of more than 0.1 % in a fit, or over two seconds, is an error.
 */
export function benchWeakestLink(): void {
  const random = seededRandom(4);
  const pieces = drawCampaign(laws, PIECES, random);
  const own = [1, 2, 3].map(() => bootstrapRun(pieces)).reduce((a, b) => (b.seconds < a.seconds ? b : a));
  const products = Array.from({ length: PRODUCTS }, () => drawCampaign(laws, 5, random));
  const started = performance.now();
  for (const product of products) {
    longChain({
      pieces: product,
      pitch_mm: 24,
      lengths_m: [1, 10, 100],
      confidence: 0.9,
      seed: 1,
      modes: ['bar', 'weld'],
    });
  }
  const findings = (performance.now() - started) / 1000;
  const perFit = (1e6 * own.seconds) / own.fits;
  const line =
    `weakest link: ${RESAMPLES} resamples of ${PIECES} pieces in two competing modes in ${own.seconds.toFixed(3)} s (${perFit.toFixed(1)} us a fit); ` +
    `long-chain findings of ${PRODUCTS} products in ${findings.toFixed(2)} s`;
  if (own.seconds > 2) process.exitCode = 1;
  const samples = Array.from({ length: PEER_FITS }, () =>
    drawCampaign(laws, PIECES, random).map((piece) => piece.force_kN),
  );
  const peer = peerRun(samples);
  if (!peer) {
    console.log(`${line}; no comparison: ${PYTHON} with SciPy is not installed`);
    return;
  }
  const away = farthest(samples, peer);
  if (away > 1e-3) process.exitCode = 1;
  const theirs = (1e6 * peer.seconds) / PEER_FITS;
  console.log(
    `${line}; SciPy ${peer.scipy} ${(theirs / 1000).toFixed(1)} ms a fit: ${(theirs / perFit).toFixed(0)} times as fast; ` +
      `${away > 1e-3 ? 'DIFFERENT: ' : 'same '}optimum within ${away.toExponential(0)}`,
  );
}

if (import.meta.main) benchWeakestLink();
