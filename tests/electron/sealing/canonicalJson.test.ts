/** RFC 8785, JSON Canonicalization Scheme: the vectors printed in it. */
import { describe, expect, it } from 'vitest';
import { canonicalJson, sealHash, sha256Hex } from '../../../electron/sealing/canonicalJson.ts';

/** RFC 8785, Appendix B, all finite rows: IEEE 754 bits and their JSON text. */
const APPENDIX_B = [
  ['0000000000000000', '0'],
  ['8000000000000000', '0'],
  ['0000000000000001', '5e-324'],
  ['8000000000000001', '-5e-324'],
  ['7fefffffffffffff', '1.7976931348623157e+308'],
  ['ffefffffffffffff', '-1.7976931348623157e+308'],
  ['4340000000000000', '9007199254740992'],
  ['c340000000000000', '-9007199254740992'],
  ['4430000000000000', '295147905179352830000'],
  ['44b52d02c7e14af5', '9.999999999999997e+22'],
  ['44b52d02c7e14af6', '1e+23'],
  ['44b52d02c7e14af7', '1.0000000000000001e+23'],
  ['444b1ae4d6e2ef4e', '999999999999999700000'],
  ['444b1ae4d6e2ef4f', '999999999999999900000'],
  ['444b1ae4d6e2ef50', '1e+21'],
  ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
  ['3eb0c6f7a0b5ed8d', '0.000001'],
  ['41b3de4355555553', '333333333.3333332'],
  ['41b3de4355555554', '333333333.33333325'],
  ['41b3de4355555555', '333333333.3333333'],
  ['41b3de4355555556', '333333333.3333334'],
  ['41b3de4355555557', '333333333.33333343'],
  ['becbf647612f3696', '-0.0000033333333333333333'],
  ['43143ff3c1cb0959', '1424953923781206.2'],
] as const;

/** RFC 8785, Appendix B, the two rows that are an error. */
const NOT_NUMBERS = ['7fffffffffffffff', '7ff0000000000000'] as const;

function doubleOf(bits: string): number {
  return Buffer.from(bits, 'hex').readDoubleBE();
}

describe('canonicalJson', () => {
  it.each(APPENDIX_B)('writes the number %s as %s (RFC 8785 Appendix B)', (bits, text) => {
    expect(canonicalJson(doubleOf(bits))).toBe(text);
  });

  it('checks every finite row of Appendix B', () => {
    expect(APPENDIX_B).toHaveLength(24);
  });

  it.each(NOT_NUMBERS)('refuses the number %s (RFC 8785 Appendix B)', (bits) => {
    expect(() => canonicalJson({ a: doubleOf(bits) })).toThrow('not a finite number');
  });

  it('sorts keys by UTF-16 code units (RFC 8785 section 3.2.3)', () => {
    const unsorted = {
      '\u20ac': 'Euro Sign',
      '\r': 'Carriage Return',
      '\ufb33': 'Hebrew Letter Dalet With Dagesh',
      '1': 'One',
      '\ud83d\ude00': 'Emoji: Grinning Face',
      '\u0080': 'Control',
      '\u00f6': 'Latin Small Letter O With Diaeresis',
    };
    expect(Object.values(JSON.parse(canonicalJson(unsorted)))).toHaveLength(7);
    expect([...canonicalJson(unsorted).matchAll(/:"([^"]*)"/gu)].map(([, value]) => value)).toEqual([
      'Carriage Return',
      'One',
      'Control',
      'Latin Small Letter O With Diaeresis',
      'Euro Sign',
      'Emoji: Grinning Face',
      'Hebrew Letter Dalet With Dagesh',
    ]);
  });

  it('writes the sample of section 3.2.2 as the RFC prints it', () => {
    const sample: unknown = JSON.parse(String.raw`{
      "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
      "literals": [null, true, false]
    }`);
    expect(canonicalJson(sample)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    );
  });

  it.each([
    ['a lone surrogate in a value', { a: '\ud800' }],
    ['a lone surrogate in a key', { '\udc00': 1 }],
    ['a missing value', { a: undefined }],
    ['a missing list entry', [undefined]],
    ['a function', { a: () => 1 }],
    ['a date', { a: new Date(0) }],
    ['a big integer', { a: 10n }],
  ])('refuses %s instead of dropping it', (_what, value) => {
    expect(() => canonicalJson(value)).toThrow();
  });
});

describe('sha256Hex', () => {
  it('gives the digest of "abc" (NIST FIPS 180-4 example)', () => {
    expect(sha256Hex('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  });

  it('counts the UTF-8 bytes of text', () => {
    expect(sealHash('Łukasz')).toBe(sha256Hex(new TextEncoder().encode('Łukasz')));
  });
});
