import { parentPort, workerData } from 'node:worker_threads';
import { coverCell } from './coverage-cell.ts';
import type { CoverageCell } from './coverage-truth.ts';

interface Task {
  readonly cell: CoverageCell;
  readonly campaigns: number;
  readonly seed: number;
}

const { cell, campaigns, seed } = workerData as Task; // given by coverage.ts
parentPort?.postMessage(coverCell(cell, campaigns, seed));
