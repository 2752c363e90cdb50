export { type HangingAsked, hangingResults } from './hanging.ts';
export { kitInCampaigns } from './kit-in-campaigns.ts';
