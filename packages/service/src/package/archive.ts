import { PassThrough } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { crc32, createInflateRaw } from 'node:zlib';
import yauzl from 'yauzl';
import { fileFault, type PackageFault } from './fault.ts';
import { type PackageLimits, sizeWords } from './limit.ts';
import { isLitter, pathFault } from './path.ts';
import { type PackageSource, SourceFault } from './source.ts';

interface Archive {
  readonly zip: yauzl.ZipFile;
  readonly limits: PackageLimits;
  readonly entries: Map<string, yauzl.Entry>;
  readonly faults: PackageFault[];
  /** Bytes unpacked so far. */
  bytes: number;
}

/**
 * Opens a ZIP as a package. Sizes in its headers are taken for no more than claims: bytes are counted as they are
 * unpacked, and unpacking stops at the limit.
 */
export async function openArchive(path: string, limits: PackageLimits): Promise<PackageSource> {
  const zip = await openZip(path);
  const archive: Archive = { zip, limits, entries: new Map(), faults: [], bytes: 0 };
  try {
    await listEntries(archive);
  } catch (error) {
    zip.close();
    throw error;
  }
  return {
    paths: new Set(archive.entries.keys()),
    faults: archive.faults,
    read: (name) => readEntry(archive, name),
    close: () => zip.close(),
  };
}

async function openZip(path: string): Promise<yauzl.ZipFile> {
  try {
    // Names stay bytes: the library would turn a backslash into a slash, and stop at the first name it dislikes.
    return await yauzl.openPromise(path, { lazyEntries: true, autoClose: false, decodeStrings: false });
  } catch (error) {
    throw corrupt(error);
  }
}

function corrupt(error: unknown): SourceFault {
  const words = error instanceof Error ? error.message : String(error);
  return new SourceFault(fileFault(null, `the ZIP is damaged or not a ZIP (${words}); pack it again`), true);
}

async function listEntries(archive: Archive): Promise<void> {
  const { zip, limits } = archive;
  if (zip.entryCount > limits.files)
    throw new SourceFault(
      fileFault(null, `the ZIP holds ${zip.entryCount} files, more than the ${limits.files} a package may hold`),
      true,
    );
  try {
    for await (const entry of zip.eachEntry()) takeEntry(archive, entry);
  } catch (error) {
    throw corrupt(error);
  }
}

function takeEntry(archive: Archive, entry: yauzl.Entry): void {
  const { generalPurposeBitFlag, fileNameRaw, extraFields } = entry;
  const name = yauzl.getFileNameLowLevel(generalPurposeBitFlag, fileNameRaw, extraFields, true).normalize('NFC');
  if (isLitter(name)) return;
  const folder = name.endsWith('/');
  const fault = pathFault(folder ? name.slice(0, -1) : name) ?? (folder ? null : entryFault(archive, name, entry));
  if (fault) archive.faults.push(fileFault(name, fault));
  else if (!folder) archive.entries.set(name, entry);
}

function entryFault(archive: Archive, name: string, entry: yauzl.Entry): string | null {
  if (archive.entries.has(name)) return 'is twice in the ZIP; pack it again with one of them';
  if (isLink(entry)) return 'is a link; pack the file itself';
  if (entry.isEncrypted()) return 'is encrypted; pack it again without a password';
  if (entry.compressionMethod !== 0 && entry.compressionMethod !== 8)
    return `is packed by method ${entry.compressionMethod}; pack it again with Deflate, the usual method`;
  // An honest header saves unpacking at all; a false one is found out in unpacking.
  return entry.uncompressedSize > archive.limits.fileBytes ? tooLarge(archive.limits) : null;
}

/** On systems with links the high half of the attributes holds the file mode; its type bits are 0xA for a link. */
function isLink(entry: yauzl.Entry): boolean {
  return entry.externalFileAttributes >>> 28 === 0xa;
}

async function readEntry(archive: Archive, name: string): Promise<Buffer> {
  const entry = archive.entries.get(name);
  if (!entry) throw new SourceFault(fileFault(name, 'is not in the package'));
  const bytes = await unpack(archive, name, entry).catch((error: unknown) => {
    if (error instanceof SourceFault) throw error;
    const words = error instanceof Error ? error.message : String(error);
    throw damaged(name, words);
  });
  if (bytes.length !== entry.uncompressedSize) throw damaged(name, 'its size is wrong');
  if (crc32(bytes) !== entry.crc32) throw damaged(name, 'its checksum is wrong');
  return bytes;
}

function damaged(name: string, words: string): SourceFault {
  return new SourceFault(fileFault(name, `is damaged in the ZIP (${words}); pack it again`));
}

/** Unpacks chunk by chunk, so that a bomb is left alone after the first of its megabytes. */
async function unpack(archive: Archive, name: string, entry: yauzl.Entry): Promise<Buffer> {
  const chunks: Buffer[] = [];
  let packed = 0;
  let size = 0;
  const claimed = entry.uncompressedSize;
  const raw = await archive.zip.openReadStreamPromise(entry, { decodeFileData: false });
  const counted = raw.on('data', (chunk: Buffer) => {
    packed += chunk.length;
  });
  const inflate = entry.compressionMethod === 0 ? new PassThrough() : createInflateRaw();
  await pipeline(counted, inflate, async (unpacked: AsyncIterable<Buffer>) => {
    for await (const chunk of unpacked) {
      size += chunk.length;
      archive.bytes += chunk.length;
      refuseBomb(archive, { name, size, packed, claimed });
      chunks.push(chunk);
    }
  });
  return Buffer.concat(chunks, size);
}

interface Unpacked {
  readonly name: string;
  /** Bytes unpacked so far, and packed bytes taken for them. */
  readonly size: number;
  readonly packed: number;
  /** The size its header claims. */
  readonly claimed: number;
}

function refuseBomb({ limits, bytes }: Archive, { name, size, packed, claimed }: Unpacked): void {
  const stop = (fault: string) => new SourceFault(fileFault(name, fault), true);
  if (size > claimed) throw stop('unpacks to more than the ZIP says of it, so unpacking was stopped; pack it again');
  if (size > limits.fileBytes) throw stop(tooLarge(limits));
  if (bytes > limits.totalBytes)
    throw stop(
      `the files together unpack to more than ${sizeWords(limits.totalBytes)}, which is the most a package may be`,
    );
  if (size > limits.ratioFrom && size > packed * limits.ratio)
    throw stop(
      `unpacks to more than ${limits.ratio} times its packed size; no record packs like that, so unpacking was stopped`,
    );
}

function tooLarge(limits: PackageLimits): string {
  return `unpacks to more than ${sizeWords(limits.fileBytes)}, which is the most one file may be`;
}
