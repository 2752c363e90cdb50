import assert from 'node:assert/strict';
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { constants, deflateRawSync, inflateRawSync } from 'node:zlib';
import { readPackage } from '../../src/package/index.ts';
import { exampleFiles, faultsOf, handWritten, quiet, temporaryFolder, writeZip } from './workshop.ts';

const MiB = 1024 * 1024;

/** Zeros packed by Deflate: one packed megabyte, written out again and again, then an empty last block. */
function packedZeros(megabytes: number): Buffer {
  const one = deflateRawSync(Buffer.alloc(MiB), { level: 9, finishFlush: constants.Z_FULL_FLUSH });
  return Buffer.concat([...Array.from({ length: megabytes }, () => one), deflateRawSync(Buffer.alloc(0))]);
}

/** Changes the central header of one entry; its fields stand at fixed places before the name. */
function patch(zip: Buffer, name: string, change: (header: number) => void): void {
  for (let at = zip.indexOf('PK\x01\x02'); at >= 0; at = zip.indexOf('PK\x01\x02', at + 4))
    if (zip.toString('latin1', at + 46, at + 46 + name.length) === name) change(at);
}

/** The example package with a bomb in it, whose header claims a size of its own choice. */
async function bomb(path: string, megabytes: number, claimed: number): Promise<string> {
  const name = 'traces/bomb.csv';
  await writeZip(path, handWritten(), (zip) => zip.addBuffer(packedZeros(megabytes), name, { compress: false }));
  const bytes = readFileSync(path);
  patch(bytes, name, (header) => {
    bytes.writeUInt16LE(8, header + 10);
    bytes.writeUInt32LE(claimed, header + 24);
  });
  writeFileSync(path, bytes);
  return path;
}

const bombs = [
  { what: 'that says so', megabytes: 2048, claimed: 2048 * MiB, fault: /unpacks to more than 256 MiB/ },
  { what: 'that claims a kilobyte', megabytes: 2048, claimed: 1024, fault: /more than the ZIP says of it/ },
  {
    what: 'that claims just what one file may be',
    megabytes: 2048,
    claimed: 256 * MiB,
    fault: /more than 100 times its packed size/,
  },
];
for (const { what, megabytes, claimed, fault } of bombs) {
  test(`a ZIP of two gigabytes in two megabytes ${what} is refused long before it is unpacked`, async (t) => {
    const path = await bomb(join(temporaryFolder(t), 'bomb.zip'), megabytes, claimed);
    assert.ok(statSync(path).size < 3 * MiB);
    const before = process.memoryUsage.rss();
    const faults = await faultsOf(path);
    const grown = process.memoryUsage.rss() - before;
    assert.deepEqual(
      faults.map(({ file }) => file),
      ['traces/bomb.csv'],
    );
    assert.match(faults[0]?.fault ?? '', fault);
    assert.ok(grown < 128 * MiB, `memory grew by ${grown} bytes`);
  });
}

test('the bomb of these tests is a true one: it unpacks to zeros', () => {
  const unpacked = inflateRawSync(packedZeros(3));
  assert.equal(unpacked.length, 3 * MiB);
  assert.ok(unpacked.every((byte) => byte === 0));
});

test('a size that is claimed too small or too large is found', async (t) => {
  const path = join(temporaryFolder(t), 'lying.zip');
  for (const claimed of [100, 100_000]) {
    await writeZip(path, handWritten({ 'traces/P-001.csv': Buffer.alloc(64 * 1024) }));
    const bytes = readFileSync(path);
    patch(bytes, 'traces/P-001.csv', (header) => bytes.writeUInt32LE(claimed, header + 24));
    writeFileSync(path, bytes);
    const faults = await faultsOf(path);
    assert.deepEqual(
      faults.map(({ file }) => file),
      ['traces/P-001.csv'],
    );
    assert.match(faults[0]?.fault ?? '', claimed === 100 ? /more than the ZIP says/ : /its size is wrong/);
  }
});

const tight = { files: 40, totalBytes: 64 * 1024, fileBytes: 32 * 1024, ratio: 1000, ratioFrom: MiB };
const limits = [
  { what: 'one file too large', sizes: [40], fault: /unpacks to more than 32 KiB/ },
  { what: 'files too large together', sizes: [30, 30, 30], fault: /together unpack to more than 64 KiB/ },
  { what: 'too many files', sizes: Array.from({ length: 41 }, () => 0), fault: /more than the 40 a package may hold/ },
];
for (const { what, sizes, fault } of limits) {
  test(`a ZIP with ${what} is refused`, async (t) => {
    const extra = Object.fromEntries(sizes.map((KiB, i) => [`traces/${i}.csv`, Buffer.alloc(KiB * 1024, String(i))]));
    const path = await writeZip(join(temporaryFolder(t), 'large.zip'), handWritten(extra));
    await assert.rejects(readPackage(path, quiet, { limits: tight }), (error) => fault.test(String(error)));
  });
}

/** The library that packs refuses such names, so they are written over a harmless one of the same length. */
async function renamed(path: string, name: string): Promise<string> {
  const placeholder = 'x'.repeat(name.length);
  await writeZip(path, handWritten({ [placeholder]: 'root:x:0:0' }));
  const bytes = readFileSync(path);
  for (let at = bytes.indexOf(placeholder); at >= 0; at = bytes.indexOf(placeholder, at + 1)) {
    const signature = bytes.toString('latin1', at - 46, at - 42);
    if (signature === 'PK\x01\x02' || bytes.toString('latin1', at - 30, at - 26) === 'PK\x03\x04')
      bytes.write(name, at, 'latin1');
  }
  writeFileSync(path, bytes);
  return path;
}

for (const name of ['../../etc/passwd', '/etc/passwd', 'C:/x.csv', 'traces\\..\\x.csv', 'traces/../../x.csv']) {
  test(`a ZIP that holds ${name} is refused`, async (t) => {
    const faults = await faultsOf(await renamed(join(temporaryFolder(t), 'climb.zip'), name));
    const found = faults.find(({ file }) => file === name);
    assert.ok(found, JSON.stringify(faults));
    assert.match(found.fault, /climbs out|absolute|drive letter|backslash/);
  });
}

test('a ZIP that holds a file twice is refused', async (t) => {
  const path = join(temporaryFolder(t), 'twice.zip');
  await writeZip(path, handWritten(), (zip) => zip.addBuffer(Buffer.from('person,name\n'), 'people.csv'));
  const faults = await faultsOf(path);
  assert.deepEqual(
    faults.map(({ file, fault }) => `${file} ${fault}`),
    ['people.csv is twice in the ZIP; pack it again with one of them'],
  );
});

test('a link in a ZIP is refused', async (t) => {
  const path = join(temporaryFolder(t), 'link.zip');
  await writeZip(path, handWritten(), (zip) =>
    zip.addBuffer(Buffer.from('/etc/passwd'), 'traces/link.csv', { mode: 0o120777 }),
  );
  const faults = await faultsOf(path);
  assert.deepEqual(
    faults.map(({ file, fault }) => `${file} ${fault}`),
    ['traces/link.csv is a link; pack the file itself'],
  );
});

test('an encrypted file in a ZIP is refused', async (t) => {
  const path = await writeZip(join(temporaryFolder(t), 'locked.zip'), handWritten());
  const bytes = readFileSync(path);
  // Bit 0 of the general purpose flag, 8 bytes into each central header.
  for (let at = bytes.indexOf('PK\x01\x02'); at >= 0; at = bytes.indexOf('PK\x01\x02', at + 4))
    bytes.writeUInt16LE(bytes.readUInt16LE(at + 8) | 1, at + 8);
  writeFileSync(path, bytes);
  const faults = await faultsOf(path);
  assert.ok(
    faults.some(
      ({ file, fault }) => file === 'people.csv' && /is encrypted; pack it again without a password/.test(fault),
    ),
    JSON.stringify(faults),
  );
});

test('a ZIP cut short, a ZIP with a byte changed and a file that is no ZIP are refused', async (t) => {
  const folder = temporaryFolder(t);
  const path = await writeZip(
    join(folder, 'whole.zip'),
    new Map([...handWritten()].map(([name, bytes]) => [name, bytes])),
    (zip) => zip.addBuffer(Buffer.from('time_s,force_kN\n0,0\n'), 'traces/stored.csv', { compress: false }),
  );
  const bytes = readFileSync(path);
  writeFileSync(join(folder, 'short.zip'), bytes.subarray(0, bytes.length - 30));
  writeFileSync(join(folder, 'letter.zip'), 'a letter, not a ZIP');
  for (const name of ['short.zip', 'letter.zip'])
    assert.match(
      (await faultsOf(join(folder, name))).map(({ fault }) => fault).join(),
      /the ZIP is damaged or not a ZIP/,
    );
  const changed = Buffer.from(bytes);
  changed.write('9', changed.indexOf('time_s,force_kN\n0,0\n') + 16);
  writeFileSync(join(folder, 'changed.zip'), changed);
  const faults = await faultsOf(join(folder, 'changed.zip'));
  assert.deepEqual(
    faults.map(({ file }) => file),
    ['traces/stored.csv'],
  );
  assert.match(faults[0]?.fault ?? '', /its checksum is wrong/);
});

test('a folder packed whole, with what a system leaves beside it, is read', async (t) => {
  const files = new Map([...exampleFiles()].map(([path, bytes]) => [`My package/${path}`, bytes]));
  files.set('__MACOSX/My package/._people.csv', new Uint8Array(1));
  const path = await writeZip(join(temporaryFolder(t), 'whole.zip'), files);
  const { campaign, files: kept, notes } = await readPackage(path, quiet);
  assert.deepEqual({ campaign, kept: kept.size, notes }, { campaign: 'MY-CAMPAIGN', kept: 3, notes: [] });
});
