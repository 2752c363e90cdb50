export { benchBook } from '@provinghouse/store';
export { campaignOf, knownCampaign, rowsOf } from './book.ts';
export { commission } from './commission.ts';
export { correctRow, withdrawRow } from './correct.ts';
export { enterRows } from './enter.ts';
export {
  type FileRead,
  type FilesAsked,
  filesHeld,
  holdFile,
  type PageAsked,
  readFileOf,
  rowsHeld,
} from './held.ts';
export { freezePlan, unblind } from './plan.ts';
