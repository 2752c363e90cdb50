/** Seconds on the clock of this process: never runs backwards, never stepped; its zero means nothing. */
export function benchNow_s(): number {
  return performance.now() / 1000;
}
