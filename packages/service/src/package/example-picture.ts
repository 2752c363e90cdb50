import { crc32, deflateSync } from 'node:zlib';

const size_px = 64;

/** A small grey picture with a ring on it, a stand-in for a photograph in the template (PNG, 8-bit grey). */
export function examplePicture(): Uint8Array {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(size_px, 0);
  header.writeUInt32BE(size_px, 4);
  header.set([8, 0, 0, 0, 0], 8);
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    signature,
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(pixels())),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** One filter byte (0, none) before each line of pixels. */
function pixels(): Buffer {
  const bytes = Buffer.alloc(size_px * (size_px + 1));
  for (let y = 0; y < size_px; y += 1) {
    for (let x = 0; x < size_px; x += 1) {
      const radius = Math.hypot(x - size_px / 2, (y - size_px / 2) * 0.7);
      bytes[y * (size_px + 1) + 1 + x] = radius > 12 && radius < 19 ? 90 : 215;
    }
  }
  return bytes;
}

/** Length, name, data, CRC over name and data (PNG specification, clause 5.3). */
function chunk(name: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const frame = Buffer.alloc(body.length + 8);
  frame.writeUInt32BE(data.length, 0);
  body.copy(frame, 4);
  frame.writeUInt32BE(crc32(body), body.length + 4);
  return frame;
}
