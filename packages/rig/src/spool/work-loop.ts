/** One job at a time, begun after a wait, as long as there is work. */
export function workLoop(work: () => Promise<void>, wait_s: () => number, hasWork: () => boolean) {
  let running: Promise<void> | null = null;
  let timer: NodeJS.Timeout | null = null;
  let isOver = false;
  function arrange(): void {
    if (running || timer || isOver || !hasWork()) return;
    timer = setTimeout(() => {
      timer = null;
      running = work().finally(() => {
        running = null;
        arrange();
      });
    }, wait_s() * 1000);
  }
  return {
    arrange,
    async end() {
      isOver = true;
      if (timer) clearTimeout(timer);
      await running;
    },
  };
}
