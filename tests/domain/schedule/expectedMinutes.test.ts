import { describe, expect, it } from 'vitest';
import { expectedMinutes, type JobForLength } from '../../../domain/schedule/expectedMinutes.ts';

const job = (patch: Partial<JobForLength> = {}): JobForLength => ({
  kind: 'startup',
  ratedInputKw: 25,
  isSystemFilled: true,
  expectedMin: null,
  ...patch,
});

/** Common practice, no source: hours that heating companies plan with. */
describe('the length of a visit', () => {
  it.each([
    ['a wall-hung startup takes 2 to 3.5 hours', [job()], 120, 210],
    ['with filling 4 to 6 hours', [job({ isSystemFilled: false })], 240, 360],
    ['a floor-standing one a day', [job({ ratedInputKw: 150 })], 480, 480],
    ['a cascade of two a day each and half a day', [job(), job()], 1200, 1200],
    ['an annual service 1.5 to 2 hours', [job({ kind: 'service' })], 90, 120],
  ])('%s', (_what, jobs, atLeast, atMost) => {
    expect(expectedMinutes(jobs)).toBeGreaterThanOrEqual(atLeast);
    expect(expectedMinutes(jobs)).toBeLessThanOrEqual(atMost);
  });

  it('takes what was written down over all of it, and less for the second service at one site', () => {
    expect(expectedMinutes([job({ expectedMin: 45 })])).toBe(45);
    const service = job({ kind: 'service' });
    expect(expectedMinutes([service, service])).toBeLessThan(2 * expectedMinutes([service]));
    expect(expectedMinutes([])).toBe(0);
  });
});
