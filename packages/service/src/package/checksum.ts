import { createHash } from 'node:crypto';
import { sha256 } from '@provinghouse/store';
import type { ListedFile } from './listing.ts';

/** Hashes a descriptor may state; one without a prefix is MD5 by the Data Package standard. */
const algorithms = ['sha256', 'sha512', 'sha1', 'md5'];

export interface Checksum {
  readonly sha256: string;
  /** What is wrong with the size or hash stated; null where both fit or none is stated. */
  readonly fault: string | null;
}

/** Hashes a file and holds it against what the descriptor says of it. */
export function checkBytes(bytes: Uint8Array, listed: ListedFile | null): Checksum {
  const own = sha256(bytes);
  const fault = listed && (sizeFault(bytes, listed.bytes) ?? hashFault(bytes, own, listed.hash));
  return { sha256: own, fault };
}

function sizeFault(bytes: Uint8Array, stated: number | null): string | null {
  if (stated === null || stated === bytes.length) return null;
  return `holds ${bytes.length} bytes where datapackage.json says ${stated}; get the right file, or correct bytes and hash if the change is meant`;
}

function hashFault(bytes: Uint8Array, own: string, stated: string | null): string | null {
  if (stated === null) return null;
  const [prefix, digits] = stated.includes(':') ? stated.split(':', 2) : ['md5', stated];
  const algorithm = (prefix ?? '').toLowerCase();
  if (!algorithms.includes(algorithm))
    return `has a hash of a kind unknown here (${prefix}); write sha256: and 64 hexadecimal digits, or leave hash out`;
  const found = algorithm === 'sha256' ? own : createHash(algorithm).update(bytes).digest('hex');
  if (found === digits?.toLowerCase()) return null;
  return `is not the file datapackage.json tells of: its ${algorithm} is ${found}, not ${digits}; get the right file, or correct hash if the change is meant`;
}
