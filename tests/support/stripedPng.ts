/** A small true-colour PNG of two-coloured stripes, made in code. */
import { crc32, deflateSync } from 'node:zlib';

export type Rgb = readonly [number, number, number];

export function stripedPng(width: number, height: number, stripe: number, colours: readonly [Rgb, Rgb]): Uint8Array {
  const rows = Array.from({ length: height }, (_, y) => [
    0,
    ...Array.from({ length: width }, (_unused, x) => colours[Math.floor((x + y) / stripe) % 2 === 0 ? 0 : 1]).flat(),
  ]);
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 2, 0, 0, 0], 8);
  return new Uint8Array(
    Buffer.concat([
      Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
      chunk('IHDR', header),
      chunk('IDAT', deflateSync(Buffer.from(rows.flat()))),
      chunk('IEND', Buffer.alloc(0)),
    ]),
  );
}

function chunk(type: string, data: Buffer): Buffer {
  const typed = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const sum = Buffer.alloc(4);
  sum.writeUInt32BE(crc32(typed));
  return Buffer.concat([length, typed, sum]);
}
