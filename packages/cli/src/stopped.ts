/** Resolves when the user asks the process to stop: Ctrl+C, or the signal of a service manager. */
export function stopped(): Promise<void> {
  return new Promise((resolve) => {
    process.once('SIGINT', () => resolve());
    process.once('SIGTERM', () => resolve());
  });
}
