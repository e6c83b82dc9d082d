/** A small true baseline JPEG of gray 8 × 8 tiles, made in code: tests need photos without shipping any. */

export type JpegParts = {
  readonly tilesAcross: number;
  readonly tilesDown: number;
  /** Gray of a tile, 0 to 255. */
  readonly gray: (column: number, row: number) => number;
  /** Segments put in after the start marker, marker and length included: an EXIF block, a comment. */
  readonly segments?: readonly Uint8Array[];
};

export function grayMosaicJpeg({ tilesAcross, tilesDown, gray, segments = [] }: JpegParts): Uint8Array {
  const width = tilesAcross * 8;
  const height = tilesDown * 8;
  const quantTable = [0xff, 0xdb, 0, 67, 0, ...Array.from({ length: 64 }, () => 8)];
  const frame = [0xff, 0xc0, 0, 11, 8, height >> 8, height & 255, width >> 8, width & 255, 1, 1, 0x11, 0];
  // DC: the luminance table of ITU-T T.81 Annex K.3.1; AC: one code, end of block.
  const dcTable = [0xff, 0xc4, 0, 31, 0x00, 0, 1, 5, 1, 1, 1, 1, 1, 1, 0, 0, 0, 0, 0, 0, 0, ...range(12)];
  const acTable = [0xff, 0xc4, 0, 20, 0x10, 1, ...Array.from({ length: 15 }, () => 0), 0];
  const scan = [0xff, 0xda, 0, 8, 1, 1, 0x00, 0, 63, 0];
  const bits: number[] = [];
  let before = 0;
  for (let row = 0; row < tilesDown; row += 1) {
    for (let column = 0; column < tilesAcross; column += 1) {
      // A flat tile's DC coefficient is eight times its level; the table divides it by eight again.
      const level = Math.round(gray(column, row)) - 128;
      pushDifference(bits, level - before);
      before = level;
      bits.push(0);
    }
  }
  return new Uint8Array([
    ...[0xff, 0xd8],
    ...segments.flatMap((segment) => [...segment]),
    ...quantTable,
    ...frame,
    ...dcTable,
    ...acTable,
    ...scan,
    ...packed(bits),
    ...[0xff, 0xd9],
  ]);
}

/** An APP1 EXIF segment with an orientation and a GPS latitude reference, as a camera writes them. */
export function exifSegment(orientation: number): Uint8Array {
  const tiff = [
    ...[0x4d, 0x4d, 0, 42, 0, 0, 0, 8],
    ...[0, 2],
    ...[0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0],
    ...[0x88, 0x25, 0, 4, 0, 0, 0, 1, 0, 0, 0, 38],
    ...[0, 0, 0, 0],
    ...[0, 1, 0x00, 0x01, 0, 2, 0, 0, 0, 2, 0x4e, 0, 0, 0, 0, 0, 0, 0],
    ...new TextEncoder().encode('GPS-PLACE-OF-THE-HOUSE'),
  ];
  const body = [...new TextEncoder().encode('Exif'), 0, 0, ...tiff];
  const length = body.length + 2;
  return new Uint8Array([0xff, 0xe1, length >> 8, length & 255, ...body]);
}

const DC_CODES = [
  '00',
  '010',
  '011',
  '100',
  '101',
  '110',
  '1110',
  '11110',
  '111110',
  '1111110',
  '11111110',
  '111111110',
];

function pushDifference(bits: number[], difference: number): void {
  const size = difference === 0 ? 0 : Math.floor(Math.log2(Math.abs(difference))) + 1;
  for (const bit of DC_CODES[size] ?? '') bits.push(Number(bit));
  const value = difference < 0 ? difference + 2 ** size - 1 : difference;
  for (let shift = size - 1; shift >= 0; shift -= 1) bits.push((value >> shift) & 1);
}

function packed(bits: readonly number[]): number[] {
  const bytes: number[] = [];
  for (let index = 0; index < bits.length; index += 8) {
    let byte = 0;
    for (let offset = 0; offset < 8; offset += 1) byte = (byte << 1) | (bits[index + offset] ?? 1);
    bytes.push(byte);
    if (byte === 0xff) bytes.push(0);
  }
  return bytes;
}

function range(length: number): number[] {
  return Array.from({ length }, (_, index) => index);
}
