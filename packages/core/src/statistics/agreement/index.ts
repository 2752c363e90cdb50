export { cohenKappa, cohenKappaOfTable, type ReadingPair } from './cohen-kappa.ts';
export { type FisherExact, fisherExact } from './fisher-exact.ts';
export { type Alternative, type FisherTwoByTwo, fisherExactTwoByTwo } from './fisher-exact-two-by-two.ts';
export { fleissKappa, fleissKappaOfCounts } from './fleiss-kappa.ts';
export type { Kappa } from './kappa.ts';
