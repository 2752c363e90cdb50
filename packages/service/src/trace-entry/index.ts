export { plannedPulls } from './planned-pulls.ts';
export { previewTrace } from './preview-trace.ts';
