import { lstat, readdir, readFile, realpath, stat } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import { fileFault, type PackageFault } from './fault.ts';
import { type PackageLimits, sizeWords } from './limit.ts';
import { isLitter } from './path.ts';
import { type PackageSource, SourceFault } from './source.ts';

/** Opens a folder as a package. Links that lead out of it, and what is no plain file, are faults. */
export async function openFolder(folder: string, limits: PackageLimits): Promise<PackageSource> {
  const root = await realpath(folder);
  const walk: Walk = { root, limits, places: new Map(), faults: [], bytes: 0 };
  await visit(walk, root);
  return {
    paths: new Set(walk.places.keys()),
    faults: walk.faults,
    read: (path) => readPlace(walk, path),
    close: () => {},
  };
}

interface Walk {
  readonly root: string;
  readonly limits: PackageLimits;
  /** Path in the package to place on the disc. */
  readonly places: Map<string, string>;
  readonly faults: PackageFault[];
  bytes: number;
}

async function visit(walk: Walk, folder: string): Promise<void> {
  const entries = await readdir(folder, { withFileTypes: true });
  for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
    const place = join(folder, entry.name);
    const path = relative(walk.root, place).split(sep).join('/').normalize('NFC');
    if (isLitter(path)) continue;
    if (entry.isDirectory()) await visit(walk, place);
    else await take(walk, path, place);
    if (walk.places.size > walk.limits.files) {
      const fault = `the folder holds more than ${walk.limits.files} files; name the folder of the package itself`;
      throw new SourceFault(fileFault(null, fault), true);
    }
  }
}

async function take(walk: Walk, path: string, place: string): Promise<void> {
  const fault = await placeFault(walk, place);
  if (fault) walk.faults.push(fileFault(path, fault));
  else walk.places.set(path, place);
}

async function placeFault({ root }: Walk, place: string): Promise<string | null> {
  const facts = await lstat(place);
  if (facts.isFile()) return null;
  if (!facts.isSymbolicLink()) return 'is neither a file nor a folder; take it out of the package';
  const target = await realpath(place).catch(() => null);
  if (target === null) return 'is a link that leads nowhere; put the file itself there';
  if (!target.startsWith(root + sep)) return 'is a link that leads out of the package; put the file itself there';
  return (await stat(target)).isFile() ? null : 'is a link to a folder; put the folder itself there';
}

async function readPlace(walk: Walk, path: string): Promise<Buffer> {
  const place = walk.places.get(path);
  if (place === undefined) throw new SourceFault(fileFault(path, 'is not in the package'));
  const { size } = await stat(place);
  if (size > walk.limits.fileBytes)
    throw new SourceFault(
      fileFault(path, `is larger than ${sizeWords(walk.limits.fileBytes)}, which is the most one file may be`),
    );
  walk.bytes += size;
  if (walk.bytes > walk.limits.totalBytes) {
    const fault = `the files together are larger than ${sizeWords(walk.limits.totalBytes)}, which is the most a package may be`;
    throw new SourceFault(fileFault(path, fault), true);
  }
  return readFile(place);
}
