import { localStorageColorSchemeManager } from '@mantine/core';

/** Where the reader's choice of ground is kept; public/scheme.js reads the same key before the first paint. */
export const groundKey = 'provinghouse-ground';

export const groundManager = localStorageColorSchemeManager({ key: groundKey });
