import { describe, expect, it, vi } from 'vitest';

// Here alone at the cost of the program.
vi.unmock('../../../electron/operations/pinCost.ts');
const { hashPin, isPin } = await import('../../../electron/operations/pins.ts');

describe('a PIN', () => {
  it('is kept under a salt of its own and OWASP’s cost for 16 MiB, and is known again', () => {
    const hash = hashPin('1234');
    expect(hash).toMatch(/^scrypt\$16384,8,5\$[\w+/]{22}==\$[\w+/]{43}=$/);
    expect(hashPin('1234')).not.toBe(hash);
    expect(isPin('1234', hash)).toBe(true);
    expect(isPin('1235', hash)).toBe(false);
  });

  it('is known again where its hash is from before costs were kept with it', () => {
    const [kind, , salt, key] = hashPin('0042').split('$');
    expect(isPin('0042', [kind, salt, key].join('$'))).toBe(true);
    expect(isPin('42', [kind, salt, key].join('$'))).toBe(false);
  });

  it('is known again under another cost than today’s', () => {
    // RFC 7914 section 12: scrypt("password", "NaCl", N=1024, r=8, p=16, dkLen=64).
    const key = Buffer.from(
      'fdbabe1c9d3472007856e7190d01e9fe7c6ad7cbc8237830e77376634b3731622eaf30d92e22a3886ff109279d9830dac727afb94a83ee6d8360cbdfa2cc0640',
      'hex',
    );
    const hash = `scrypt$1024,8,16$${Buffer.from('NaCl').toString('base64')}$${key.toString('base64')}`;
    expect(isPin('password', hash)).toBe(true);
    expect(isPin('passwort', hash)).toBe(false);
  });

  it('is nobody’s where there is no hash', () => {
    expect(isPin('1234', null)).toBe(false);
    expect(isPin('1234', '')).toBe(false);
    expect(isPin('1234', 'plain$1234')).toBe(false);
  });
});
