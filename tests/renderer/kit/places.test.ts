import { describe, expect, it } from 'vitest';
import { countryOptions } from '../../../renderer/kit/places.ts';

describe('countryOptions', () => {
  it('should name no country twice, so that Germany cannot be chosen under a code given up long ago', () => {
    const options = countryOptions();
    expect(options.length).toBeGreaterThan(200);
    expect(options.filter(({ label }, at) => options.findIndex((one) => one.label === label) !== at)).toEqual([]);
    expect(
      options.filter(({ label }) => ['Germany', 'United Kingdom'].includes(label)).map(({ value }) => value),
    ).toEqual(['DE', 'GB']);
  });
});
