import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { againstLimit } from '../../../domain/judgement/limits/againstLimit.ts';

const exact = (value: number) => ({ value, lowest: value, highest: value });
const spread = (value: number, plusMinus: number) => ({ value, lowest: value - plusMinus, highest: value + plusMinus });
const outside = { min: 1, max: 2, edge: 0.2, severity: 'outside' as const };
const stop = { min: null, max: 400, edge: 50, severity: 'stop' as const };

describe('againstLimit', () => {
  it.each([
    [exact(1.5), 'within'],
    [exact(2), 'near-the-edge'],
    [exact(1.1), 'near-the-edge'],
    [exact(2.01), 'outside'],
    [exact(0.99), 'outside'],
    [spread(1.95, 0.1), 'cannot-tell-apart'],
    [spread(2.05, 0.1), 'cannot-tell-apart'],
    [spread(2.2, 0.1), 'outside'],
  ] as const)('%j against 1–2: %s', (value, verdict) => {
    expect(againstLimit(value, outside).verdict).toBe(verdict);
  });

  it('counts uncertainty against a stop limit, never for it', () => {
    expect(againstLimit(spread(390, 20), stop).verdict).toBe('stop');
    expect(againstLimit(spread(410, 20), stop).verdict).toBe('stop');
    expect(againstLimit(spread(360, 20), stop).verdict).toBe('near-the-edge');
    expect(againstLimit(spread(300, 20), stop).verdict).toBe('within');
  });

  it('takes an over-range display as at least that much', () => {
    const over = (value: number) => ({ value, lowest: value, highest: Number.POSITIVE_INFINITY });
    expect(againstLimit(over(100), stop).verdict).toBe('stop');
    expect(againstLimit(over(1.5), outside).verdict).toBe('cannot-judge');
    expect(againstLimit(over(3), outside).verdict).toBe('outside');
  });

  it('has 27 psi inside 90 % of 30 psi', () => {
    const psi = 6894.757293168362 / 1e5;
    expect(
      againstLimit(exact(27 * psi), { min: null, max: 0.9 * 30 * psi, edge: 0, severity: 'outside' }).verdict,
    ).toBe('within');
  });

  it('never gets milder as the uncertainty grows, where it is a stop', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: -1000, max: 1000, noNaN: true }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        (value, less, more) => {
          const small = againstLimit(spread(value, less), stop).verdict;
          const large = againstLimit(spread(value, less + more), stop).verdict;
          if (small === 'stop') expect(large).toBe('stop');
        },
      ),
    );
  });
});
