import { deflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { photoForPdf } from '../../../electron/documents/packet/photoForPdf.ts';
import { exifSegment, grayMosaicJpeg } from '../../support/grayMosaicJpeg.ts';
import { stripedPng } from '../../support/stripedPng.ts';

const gray = (): number => 120;

describe('photoForPdf', () => {
  it('leaves the place out of a JPEG and keeps which way is up', () => {
    const withPlace = grayMosaicJpeg({ tilesAcross: 4, tilesDown: 2, gray, segments: [exifSegment(6)] });
    expect(Buffer.from(withPlace).includes('GPS-PLACE')).toBe(true);
    const photo = photoForPdf(withPlace);
    if (photo.kind !== 'drawable') throw new Error(photo.why);
    expect(Buffer.from(photo.bytes).includes('GPS-PLACE')).toBe(false);
    // Turned by a quarter: 32 × 16 pixels stand 16 wide and 32 high.
    expect([photo.widthPx, photo.heightPx]).toEqual([16, 32]);
    expect(photoForPdf(photo.bytes)).toEqual(photo);
  });

  it('cuts off what a camera appends after the picture, and comments', () => {
    const comment = new Uint8Array([0xff, 0xfe, 0, 10, ...Buffer.from('nobody! ')]);
    const plain = grayMosaicJpeg({ tilesAcross: 2, tilesDown: 2, gray });
    const long = new Uint8Array([
      ...grayMosaicJpeg({ tilesAcross: 2, tilesDown: 2, gray, segments: [comment] }),
      ...plain,
    ]);
    const photo = photoForPdf(long);
    expect(photo.kind === 'drawable' && Buffer.from(photo.bytes).equals(plain)).toBe(true);
  });

  it('keeps only the picture of a PNG', () => {
    const png = stripedPng(10, 5, 2, [
      [1, 2, 3],
      [200, 210, 220],
    ]);
    const text = Buffer.concat([Buffer.from([0, 0, 0, 7]), Buffer.from('tEXtplace\0x'), Buffer.alloc(4)]);
    const withText = new Uint8Array(Buffer.concat([png.subarray(0, 33), text, png.subarray(33)]));
    const photo = photoForPdf(withText);
    expect(photo.kind === 'drawable' && Buffer.from(photo.bytes).equals(Buffer.from(png))).toBe(true);
  });

  it('does not draw printing colours', () => {
    const cmyk = grayMosaicJpeg({ tilesAcross: 2, tilesDown: 2, gray });
    const frame = Buffer.from(cmyk).indexOf(Buffer.from([0xff, 0xc0]));
    cmyk[frame + 9] = 4;
    expect(photoForPdf(cmyk)).toEqual({ kind: 'not-drawable', why: 'it is in printing colours (CMYK)' });
  });

  it('does not draw a picture that would fill the memory', () => {
    const huge = stripedPng(2, 2, 1, [
      [0, 0, 0],
      [9, 9, 9],
    ]);
    new DataView(huge.buffer).setUint32(16, 50_000);
    new DataView(huge.buffer).setUint32(20, 50_000);
    expect(photoForPdf(huge).kind).toBe('not-drawable');
  });

  it('should not fall over any truncated or damaged file', () => {
    const whole = [
      grayMosaicJpeg({ tilesAcross: 3, tilesDown: 3, gray, segments: [exifSegment(3)] }),
      stripedPng(8, 8, 2, [
        [0, 0, 0],
        [255, 255, 255],
      ]),
    ];
    for (const bytes of whole) {
      for (let length = 0; length < bytes.length; length += 1) {
        const cut = photoForPdf(bytes.slice(0, length));
        expect(cut.kind, `${length} bytes`).toBe('not-drawable');
      }
      for (let at = 0; at < bytes.length; at += 1) {
        const flipped = bytes.slice();
        flipped[at] = (flipped[at] ?? 0) ^ 0xff;
        expect(['drawable', 'not-drawable']).toContain(photoForPdf(flipped).kind);
      }
    }
  });

  it.each([
    ['a GIF', Buffer.from('GIF89a')],
    ['SVG', Buffer.from('<svg onload="alert(1)"/>')],
    ['WebP', Buffer.from('RIFF0000WEBPVP8 ')],
    ['a ZIP', new Uint8Array(deflateSync(Buffer.from('x')))],
  ])('does not take %s for a photo', (_what, bytes) => {
    expect(photoForPdf(bytes)).toEqual({ kind: 'not-drawable', why: 'it is neither JPEG nor PNG' });
  });
});
