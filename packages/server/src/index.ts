export * from './app.ts';
export { describeApi } from './describe-api.ts';
export { type EntryPorts, entryPorts } from './entry-ports.ts';
export * from './main.ts';
export * from './ports.ts';
export { type Problem, type ProblemCode, problemKinds } from './problem.ts';
export { recordPorts } from './record-ports.ts';
export type { RigPorts, RigViewer } from './rig-ports.ts';
export * from './serve-record.ts';
