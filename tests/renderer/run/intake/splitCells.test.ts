import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeText } from '../../../../renderer/run/intake/readFileText.ts';
import { splitCells } from '../../../../renderer/run/intake/splitCells.ts';

describe('splitCells', () => {
  it.each([
    [
      'semicolons beside decimal commas',
      'O2;CO\n5,2;18\n5,1;17',
      [
        ['O2', 'CO'],
        ['5,2', '18'],
        ['5,1', '17'],
      ],
    ],
    [
      'commas',
      'O2,CO\r\n5.2,18',
      [
        ['O2', 'CO'],
        ['5.2', '18'],
      ],
    ],
    [
      'tabs, as copied from a table',
      'O2\tCO\n5.2\t18',
      [
        ['O2', 'CO'],
        ['5.2', '18'],
      ],
    ],
    [
      'lines with a colon',
      'O2: 5,2 %\nCO: 18 ppm',
      [
        ['O2', '5,2', '%'],
        ['CO', '18', 'ppm'],
      ],
    ],
    [
      'lines with gaps',
      'O2      5.2 %\nT flue   61,5 °C',
      [
        ['O2', '5.2', '%'],
        ['T flue', '61,5', '°C'],
      ],
    ],
    [
      'lines with one space',
      'O2 5.2 %\nCO >4000 ppm',
      [
        ['O2', '5.2', '%'],
        ['CO', '>4000', 'ppm'],
      ],
    ],
  ])('splits %s', (_name, text, cells) => expect(splitCells(text)).toEqual(cells));

  it('takes any text without throwing', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(splitCells(text)).toBeInstanceOf(Array);
      }),
    );
  });
});

describe('decodeText', () => {
  it('reads UTF-8, UTF-16 and what older instruments write', () => {
    expect(decodeText(new TextEncoder().encode('T °C'))).toEqual({ ok: true, value: 'T °C' });
    expect(decodeText(new Uint8Array([0x54, 0x20, 0xb0, 0x43]))).toEqual({ ok: true, value: 'T °C' });
    expect(decodeText(new Uint8Array([0xff, 0xfe, 0x4f, 0, 0x32, 0]))).toEqual({ ok: true, value: 'O2' });
  });
  it('says a sentence of a picture, a zipped table and an empty file', () => {
    expect(decodeText(new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0]))).toMatchObject({
      ok: false,
    });
    expect(decodeText(new Uint8Array([0x50, 0x4b, 3, 4, 20, 0, 6, 0]))).toMatchObject({ ok: false });
    expect(decodeText(new Uint8Array([0x20, 0x0a]))).toEqual({ ok: false, error: 'There is nothing in this file.' });
  });
});
