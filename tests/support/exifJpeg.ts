/** A small picture with what a camera writes beside it. The layout is that of Exif 2.32: TIFF header, IFD0, Exif and GPS directories. */
import { grayMosaicJpeg } from './grayMosaicJpeg.ts';

export function exifJpeg({
  taken,
  offset,
  hasGps = false,
  satellite,
  isLittle = false,
}: {
  readonly taken?: string;
  readonly offset?: string;
  readonly hasGps?: boolean;
  /** The satellites' time, UTC; written beside the place as cameras do. */
  readonly satellite?: { readonly day: string; readonly time: readonly [hour: number, minute: number, second: number] };
  readonly isLittle?: boolean;
}): Uint8Array {
  const picture = grayMosaicJpeg({ tilesAcross: 2, tilesDown: 2, gray: () => 128 });
  const exif: (readonly [tag: number, text: string])[] = [
    ...(taken === undefined ? [] : [[0x9003, taken] as const]),
    ...(offset === undefined ? [] : [[0x9011, offset] as const]),
  ];
  const body = new Uint8Array(600);
  const view = new DataView(body.buffer);
  body.set(new TextEncoder().encode('Exif\0\0'));
  const tiff = 6;
  view.setUint16(tiff, isLittle ? 0x4949 : 0x4d4d);
  view.setUint16(tiff + 2, 42, isLittle);
  view.setUint32(tiff + 4, 8, isLittle);
  const EXIF_AT = 60;
  const GPS_AT = 300;
  const entry = (at: number, tag: number, type: number, count: number, value: number) => {
    view.setUint16(tiff + at, tag, isLittle);
    view.setUint16(tiff + at + 2, type, isLittle);
    view.setUint32(tiff + at + 4, count, isLittle);
    view.setUint32(tiff + at + 8, value, isLittle);
  };
  view.setUint16(tiff + 8, hasGps ? 2 : 1, isLittle);
  entry(10, 0x8769, 4, 1, EXIF_AT);
  if (hasGps) entry(22, 0x8825, 4, 1, GPS_AT);
  view.setUint16(tiff + EXIF_AT, exif.length, isLittle);
  let textAt = EXIF_AT + 2 + exif.length * 12 + 4;
  for (const [index, [tag, text]] of exif.entries()) {
    const bytes = new TextEncoder().encode(`${text}\0`);
    entry(EXIF_AT + 2 + index * 12, tag, 2, bytes.length, textAt);
    body.set(bytes, tiff + textAt);
    textAt += bytes.length;
  }
  if (hasGps) {
    view.setUint16(tiff + GPS_AT, satellite === undefined ? 1 : 3, isLittle);
    // GPSLatitude, three fractions: 44° 38' 20", in the open sea of the file.
    entry(GPS_AT + 2, 0x0002, 5, 3, GPS_AT + 50);
    const fractions = (at: number, numbers: readonly number[]) => {
      for (const [index, number] of numbers.entries()) view.setUint32(tiff + at + index * 4, number, isLittle);
    };
    fractions(GPS_AT + 50, [44, 1, 38, 1, 20, 1]);
    if (satellite !== undefined) {
      const [hour, minute, second] = satellite.time;
      entry(GPS_AT + 14, 0x0007, 5, 3, GPS_AT + 80);
      // Seconds in thousandths, as some cameras write them.
      fractions(GPS_AT + 80, [hour, 1, minute, 1, second * 1000, 1000]);
      const day = new TextEncoder().encode(`${satellite.day}\0`);
      entry(GPS_AT + 26, 0x001d, 2, day.length, GPS_AT + 110);
      body.set(day, tiff + GPS_AT + 110);
    }
  }
  const segment = new Uint8Array([0xff, 0xe1, (body.length + 2) >> 8, (body.length + 2) & 0xff, ...body]);
  return new Uint8Array([...picture.subarray(0, 2), ...segment, ...picture.subarray(2)]);
}
