/** Bounds that no honest package comes near. They stop a file made to fill the memory or the disc. */
export interface PackageLimits {
  /** Files in the folder or ZIP. */
  readonly files: number;
  /** Bytes of all files together, unpacked. */
  readonly totalBytes: number;
  /** Bytes of one file, unpacked. */
  readonly fileBytes: number;
  /** Unpacked over packed size of one file ... */
  readonly ratio: number;
  /** ... counted once this much of it is unpacked: small files of one repeated row pack better than any bomb. */
  readonly ratioFrom: number;
}

const MiB = 1024 * 1024;

export const packageLimits: PackageLimits = {
  files: 20_000,
  totalBytes: 1024 * MiB,
  fileBytes: 256 * MiB,
  ratio: 100,
  ratioFrom: 8 * MiB,
};

/** A size as a person reads it. */
export function sizeWords(bytes: number): string {
  if (bytes >= MiB) return `${Math.floor(bytes / MiB)} MiB`;
  return bytes >= 1024 ? `${Math.floor(bytes / 1024)} KiB` : `${bytes} bytes`;
}
