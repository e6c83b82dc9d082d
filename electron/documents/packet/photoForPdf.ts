/**
 * A photo as it may stand in a page: checked by content, with nothing of what the camera wrote into it (place, owner,
 * times) but which way is up. The bytes on file are never altered; the ZIP carries them as they are.
 */
import { inflateSync } from 'node:zlib';

export type PagePhoto =
  | { readonly kind: 'drawable'; readonly bytes: Uint8Array; readonly widthPx: number; readonly heightPx: number }
  | { readonly kind: 'not-drawable'; readonly why: string };

/** As for every picture that comes in from outside. */
const MOST_PIXELS = 40_000_000;

export function photoForPdf(bytes: Uint8Array): PagePhoto {
  if (bytes.length === 0) return { kind: 'not-drawable', why: 'its file is not at hand' };
  if (bytes[0] === 0xff && bytes[1] === 0xd8) return jpegForPdf(bytes);
  if (PNG_START.every((byte, index) => bytes[index] === byte)) return pngForPdf(bytes);
  return { kind: 'not-drawable', why: 'it is neither JPEG nor PNG' };
}

const PNG_START = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

function jpegForPdf(bytes: Uint8Array): PagePhoto {
  const parts: Uint8Array[] = [];
  let orientation = 1;
  let frame: { readonly widthPx: number; readonly heightPx: number; readonly components: number } | null = null;
  let at = 2;
  let hasScan = false;
  while (bytes[at] === 0xff && bytes[at + 1] !== 0xd9) {
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    const length = word(bytes, at + 2);
    if (length < 2 || at + 2 + length > bytes.length) return damaged();
    const segment = bytes.subarray(at, at + 2 + length);
    if (marker === 0xe1) orientation = exifOrientation(segment) ?? orientation;
    if (isFrame(marker)) {
      if (length < 11) return damaged();
      frame = { heightPx: word(segment, 5), widthPx: word(segment, 7), components: segment[9] ?? 0 };
    }
    // APP14 says how colours are coded and has to stay; all other application segments and comments go.
    const isLeftOut = (marker >= 0xe1 && marker <= 0xef && marker !== 0xee) || marker === 0xfe;
    if (!isLeftOut) parts.push(segment);
    at += 2 + length;
    if (marker === 0xda) {
      const end = scanEnd(bytes, at);
      parts.push(bytes.subarray(at, end));
      at = end;
      hasScan = true;
    }
  }
  // What a camera appends after the end (previews, with place and all) is not looked at.
  if (bytes[at + 1] !== 0xd9 || !hasScan) return damaged();
  if (!frame || frame.widthPx === 0 || frame.heightPx === 0) return damaged();
  if (frame.widthPx * frame.heightPx > MOST_PIXELS)
    return { kind: 'not-drawable', why: 'it is larger than 40 megapixels' };
  // Four colours need a colour profile of their own, which an archive document may not mix with screen colours.
  if (frame.components === 4) return { kind: 'not-drawable', why: 'it is in printing colours (CMYK)' };
  const turned = orientation > 4;
  return {
    kind: 'drawable',
    bytes: joined([bytes.subarray(0, 2), orientationSegment(orientation), ...parts, bytes.subarray(at, at + 2)]),
    widthPx: turned ? frame.heightPx : frame.widthPx,
    heightPx: turned ? frame.widthPx : frame.heightPx,
  };
}

/** Entropy-coded data goes on until a marker that is neither a stuffed zero nor a restart. */
function scanEnd(bytes: Uint8Array, from: number): number {
  let at = from;
  while (at < bytes.length) {
    const next = bytes[at + 1] ?? 0;
    if (bytes[at] === 0xff && next !== 0 && next !== 0xff && !(next >= 0xd0 && next <= 0xd7)) return at;
    at += 1;
  }
  return at;
}

/** SOF0 to SOF15 without the Huffman, arithmetic and JPEG-extension markers that lie between them. */
function isFrame(marker: number): boolean {
  return marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
}

/** Tag 0x0112 of the first directory (Exif 2.3, 4.6.4). */
function exifOrientation(segment: Uint8Array): number | null {
  const start = 10;
  if (String.fromCharCode(...segment.subarray(4, 8)) !== 'Exif' || segment.length < start + 14) return null;
  const view = new DataView(segment.buffer, segment.byteOffset + start, segment.length - start);
  const isLittle = view.getUint16(0) === 0x4949;
  const directory = view.getUint32(4, isLittle);
  if (directory + 2 > view.byteLength) return null;
  const count = view.getUint16(directory, isLittle);
  for (let index = 0; index < count; index += 1) {
    const entry = directory + 2 + index * 12;
    if (entry + 12 > view.byteLength) return null;
    if (view.getUint16(entry, isLittle) !== 0x0112) continue;
    const value = view.getUint16(entry + 8, isLittle);
    return value >= 1 && value <= 8 ? value : null;
  }
  return null;
}

/** The smallest EXIF block that holds the orientation and nothing else. */
function orientationSegment(orientation: number): Uint8Array {
  if (orientation === 1) return new Uint8Array();
  const tiff = [0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0, 0, 0, 0, 0];
  const body = [0x45, 0x78, 0x69, 0x66, 0, 0, ...tiff];
  return new Uint8Array([0xff, 0xe1, 0, body.length + 2, ...body]);
}

/** Only the chunks that make the picture. */
const PNG_KEPT = new Set(['IHDR', 'PLTE', 'tRNS', 'IDAT', 'IEND']);

function pngForPdf(bytes: Uint8Array): PagePhoto {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const parts: Uint8Array[] = [bytes.subarray(0, 8)];
  let at = 8;
  let hasEnd = false;
  const data: Uint8Array[] = [];
  while (at + 12 <= bytes.length && !hasEnd) {
    const length = view.getUint32(at);
    const type = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    if (at + 12 + length > bytes.length) return damaged();
    if (at === 8 && (type !== 'IHDR' || length !== 13)) return damaged();
    if (PNG_KEPT.has(type)) parts.push(bytes.subarray(at, at + 12 + length));
    if (type === 'IDAT') data.push(bytes.subarray(at + 8, at + 8 + length));
    hasEnd = type === 'IEND';
    at += 12 + length;
  }
  if (!hasEnd || data.length === 0) return damaged();
  const [widthPx, heightPx] = [view.getUint32(16), view.getUint32(20)];
  if (widthPx === 0 || heightPx === 0) return damaged();
  if (widthPx * heightPx > MOST_PIXELS) return { kind: 'not-drawable', why: 'it is larger than 40 megapixels' };
  return inflates(joined(data), widthPx, heightPx)
    ? { kind: 'drawable', bytes: joined(parts), widthPx, heightPx }
    : damaged();
}

/** Eight bytes a pixel (16 bit, four channels) and a filter byte a row are the most a PNG of this size can hold. */
function inflates(data: Uint8Array, widthPx: number, heightPx: number): boolean {
  try {
    return inflateSync(data, { maxOutputLength: (widthPx * 8 + 8) * (heightPx + 8) }).length > 0;
  } catch {
    return false;
  }
}

function damaged(): PagePhoto {
  return { kind: 'not-drawable', why: 'its file is damaged' };
}

function word(bytes: Uint8Array, at: number): number {
  return ((bytes[at] ?? 0) << 8) | (bytes[at + 1] ?? 0);
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  return new Uint8Array(Buffer.concat(parts));
}
