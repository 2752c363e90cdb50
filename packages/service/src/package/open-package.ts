import { stat } from 'node:fs/promises';
import { basename, dirname } from 'node:path';
import { descriptorName } from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import { openArchive } from './archive.ts';
import { openFolder } from './folder.ts';
import type { PackageLimits } from './limit.ts';
import type { PackageSource } from './source.ts';

/**
 * Opens a folder or ZIP as a package. Where the package lies in one folder inside it, as when a folder was packed whole,
 * paths are taken from there.
 * @throws InputError `package/not-found`; SourceFault where it cannot be opened
 */
export async function openPackage(path: string, limits: PackageLimits): Promise<PackageSource> {
  const facts = await stat(path).catch((error: unknown) => {
    throw notFound(path, error);
  });
  if (facts.isDirectory()) return rooted(await openFolder(path, limits));
  if (basename(path) === descriptorName) return openFolder(dirname(path), limits);
  return rooted(await openArchive(path, limits));
}

function notFound(path: string, error: unknown): unknown {
  if (!(error instanceof Error && 'code' in error && (error.code === 'ENOENT' || error.code === 'ENOTDIR')))
    return error;
  return new InputError('package/not-found', `${path}: there is no such folder or ZIP; check the path`, { path });
}

function rooted(source: PackageSource): PackageSource {
  if (source.paths.has(descriptorName)) return source;
  const tops = new Set([...source.paths].map((path) => path.split('/')[0]));
  const [top] = tops;
  const prefix = `${top}/`;
  if (tops.size !== 1 || !source.paths.has(prefix + descriptorName)) return source;
  return {
    paths: new Set([...source.paths].map((path) => path.slice(prefix.length))),
    faults: source.faults,
    read: (path) => source.read(prefix + path),
    close: source.close,
  };
}
