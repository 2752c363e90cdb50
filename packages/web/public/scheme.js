// Sets the ground before the first paint, so that a dark room is not lit by a white page. Key and attribute: src/lib/scheme.ts.
(() => {
  let kept = null;
  try {
    kept = localStorage.getItem('provinghouse-ground');
  } catch {
    // Storage may be shut off: the system's choice holds.
  }
  const dark = kept === 'dark' || (kept !== 'light' && matchMedia('(prefers-color-scheme: dark)').matches);
  document.documentElement.setAttribute('data-mantine-color-scheme', dark ? 'dark' : 'light');
})();
