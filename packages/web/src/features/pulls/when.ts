/** An instant as a field for day and time shows it, on the clock of this bench; empty for none. */
export function clockText(iso: string | null): string {
  const at = iso === null ? Number.NaN : Date.parse(iso);
  if (Number.isNaN(at)) return '';
  const local = new Date(at - new Date(at).getTimezoneOffset() * 60_000);
  return local.toISOString().slice(0, 16);
}

/** What such a field holds as an instant, ISO 8601 in UTC; null while it holds none. */
export function instantOf(clock: string): string | null {
  const at = clock === '' ? Number.NaN : new Date(clock).getTime();
  return Number.isNaN(at) ? null : new Date(at).toISOString().replace(/\.\d{3}Z$/, 'Z');
}
