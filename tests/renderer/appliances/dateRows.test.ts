import { describe, expect, it } from 'vitest';
import { contract } from '../../../electron/contract/index.ts';
import { datesFromForm, NO_DATES } from '../../../renderer/appliances/dateRows.ts';
import { FormReader } from '../../../renderer/form/FormReader.ts';

describe('dates of a new appliance', () => {
  it('should complain once, not twice, of a day without how we know it', () => {
    const reader = new FormReader();
    const dates = datesFromForm({ ...NO_DATES, installed: { text: '26 Nov 2026', source: ' ' } }, reader);
    expect(Object.keys(reader.errors)).toEqual(['dates.installed.source']);
    const { error } = contract['appliances.create'].input.safeParse({ dates });
    expect(error?.issues.filter(({ path }) => path[0] === 'dates')).toEqual([]);
  });

  it('should leave out the days that nobody gave', () => {
    const reader = new FormReader();
    const dates = datesFromForm({ ...NO_DATES, made: { text: 'Oct 2025', source: 'plate' } }, reader);
    expect(dates).toEqual([{ kind: 'made', on: '2025-10-01', precision: 'month', source: 'plate' }]);
    expect(reader.errors).toEqual({});
  });
});
