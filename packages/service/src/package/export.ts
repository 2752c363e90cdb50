import { buffer } from 'node:stream/consumers';
import { isBlind } from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import { attachments, campaignCodes, campaignRows, isStoreError, readBlob } from '@provinghouse/store';
import yazl from 'yazl';
import type { Effects } from '../effects.ts';
import { writeWhole } from '../write-whole.ts';
import { packageFiles } from './write.ts';

export interface Export {
  readonly campaign: string;
  /** The ZIP to write; a file of that name is replaced. */
  readonly out: string;
}

export interface ExportResult {
  readonly campaign: string;
  readonly out: string;
  readonly files: number;
  /** Size of the ZIP. */
  readonly bytes: number;
}

/** One time for every file. A ZIP states local time without its zone, so this must be made in local time, too. */
function fixedTime(): Date {
  return new Date(2000, 0, 1, 12);
}

/** Media that are compressed already are stored as they are. */
const compressed = /\.(png|jpe?g|webp|heic|zip|pdf)$/i;

/**
 * Writes a campaign as a data package in a ZIP. The same content gives the same bytes. The file takes its name only
 * when it is complete; a failure leaves nothing.
 * @throws InputError `campaign/unknown`, `file/unwritable` where `out` cannot be written
 */
export async function exportPackage({ campaign, out }: Export, effects: Effects): Promise<ExportResult> {
  const { zip, files } = await packCampaign(campaign, effects);
  effects.signal?.throwIfAborted();
  await writeWhole(out, zip);
  return { campaign, out, files, bytes: zip.length };
}

/** A campaign as a data package in a ZIP: see {@link exportPackage}. @throws InputError `campaign/unknown` */
export async function packCampaign(
  campaign: string,
  effects: Effects,
): Promise<{ readonly zip: Buffer; readonly files: number }> {
  const files = packageFiles({ rows: await rowsOf(campaign, effects), files: await filesOf(campaign, effects) });
  return { zip: await packZip(files, effects), files: files.size };
}

/**
 * The same for whoever reads over the server: while a campaign is blind the package is not handed out, since it holds every name.
 * @throws InputError `campaign/unknown`, `entry/blind`
 */
export async function packForReader(campaign: string, effects: Effects): Promise<Buffer> {
  const row = (await rowsOf(campaign, effects)).campaign[0];
  if (row && isBlind(row))
    throw new InputError(
      'entry/blind',
      'This campaign is blind now, and the data package holds every name. Unblind it first.',
    );
  return (await packCampaign(campaign, effects)).zip;
}

async function rowsOf(campaign: string, { store }: Effects) {
  try {
    return await campaignRows(store, campaign);
  } catch (error) {
    if (!isStoreError(error) || error.code !== 'store/unknown-campaign') throw error;
    const codes = await campaignCodes(store);
    const there = codes.length > 0 ? `it holds ${codes.join(', ')}` : 'it holds none yet';
    throw new InputError('campaign/unknown', `the record holds no campaign "${campaign}"; ${there}`, {
      campaign,
      codes,
    });
  }
}

async function filesOf(campaign: string, { store, signal }: Effects): Promise<Map<string, Uint8Array>> {
  const files = new Map<string, Uint8Array>();
  for (const { path, sha256 } of await attachments(store, campaign)) {
    signal?.throwIfAborted();
    files.set(path, await readBlob(store, sha256));
  }
  return files;
}

async function packZip(files: ReadonlyMap<string, Uint8Array>, { progress }: Effects): Promise<Buffer> {
  const zip = new yazl.ZipFile();
  let done = 0;
  for (const [name, bytes] of files) {
    const options = { mtime: fixedTime(), mode: 0o100644, forceDosTimestamp: true, compress: !compressed.test(name) };
    zip.addBuffer(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length), name, options);
    done += 1;
    progress('packing', done, files.size);
  }
  zip.end();
  return buffer(zip.outputStream);
}
