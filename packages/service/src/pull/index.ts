export { type PracticeWire, type ServePracticeOptions, servePractice, usualPattern } from '@provinghouse/rig/practice';
export { type Audience, audience, type Viewer } from './audience.ts';
export { readKit } from './kit.ts';
export { bringInPractice, practiceCampaign, practiceRigCode } from './practice-campaign.ts';
export { type PracticeRigOptions, practiceRig } from './practice-rig.ts';
export { openRigDesks, type RigDesks, type RigDesksOptions } from './rig-desks.ts';
export { newsTeller, type WatchNews } from './watch-news.ts';
export { type Watched, type WatchSourceInput, watchSource } from './watch-source.ts';
export type { OpenedWires, WiredRig } from './wired-rig.ts';
