/** What a spreadsheet would run: OWASP's CSV injection list (= + - @ tab CR) and their full-width forms. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvFile, csvNumber, csvText, csvTextBack } from '../../../electron/documents/csvCell.ts';

describe('csvText', () => {
  it.each([
    '=1+1',
    '+1',
    '-5',
    '@SUM(A1)',
    '\t=1',
    '\r=1',
    '＝1',
    '＋1',
    '－1',
    '＠x',
    ' =1',
    '"=1',
    '\ufeff=1',
    "'=1",
  ])('takes the power out of %j', (text) => {
    const cell = csvText(text).replace(/^"|"$/gu, '').replaceAll('""', '"');
    expect(cell.startsWith("'")).toBe(true);
    expect(csvTextBack(cell)).toBe(text);
  });

  it.each(['92', '4.5 bar', 'O’Leary', "'tis", 'a=b', 'x-y', ''])('leaves %j alone', (text) => {
    expect(csvText(text)).toBe(text);
  });

  it('quotes what holds separators, quotes or line ends', () => {
    expect(csvText('a,b')).toBe('"a,b"');
    expect(csvText('say "x"\nthen')).toBe('"say ""x""\nthen"');
  });

  it('should come back as it went, whatever it is', () => {
    const risky = fc.string({ unit: fc.constantFrom(...'=+-@\t\r\'"\ufeff＝ a1,;\n') });
    fc.assert(
      fc.property(fc.oneof(fc.string(), risky), (text) => {
        const cell = csvText(text);
        const read =
          cell.startsWith('"') && cell.endsWith('"') && cell.length > 1
            ? cell.slice(1, -1).replaceAll('""', '"')
            : cell;
        expect(csvTextBack(read)).toBe(text);
        expect(/^[\s"\ufeff]*[=+\-@\t\r＝＋－＠]/u.test(read)).toBe(false);
      }),
      { numRuns: 5000 },
    );
  });
});

describe('csvNumber', () => {
  it('keeps a number a number and nothing an empty cell', () => {
    expect([csvNumber('-5.2'), csvNumber('0'), csvNumber(null)]).toEqual(['-5.2', '0', '']);
  });

  it('refuses what is none', () => {
    expect(() => csvNumber('=1')).toThrow('not a plain number');
  });
});

describe('csvFile', () => {
  it('ends every line as RFC 4180 says, after a byte order mark', () => {
    expect(csvFile([['a', 'b'], ['c']])).toBe('\ufeffa,b\r\nc\r\n');
  });
});
