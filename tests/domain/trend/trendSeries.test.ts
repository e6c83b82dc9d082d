import { describe, expect, it } from 'vitest';
import { trendSeries } from '../../../domain/trend/trendSeries.ts';
import { pastRun, readingsOf } from './pastRuns.ts';

describe('trendSeries', () => {
  it('has a point for each visit that read it, and says where it began anew', () => {
    const runs = [
      pastRun(
        '2023-10-02',
        { 'co2DryVolPct@high': 9.2, 'waterPh@after': 8.1 },
        { kind: 'startup', startsBaseline: true },
      ),
      pastRun('2024-10-02', { 'co2DryVolPct@high': 9.0 }),
      pastRun('2025-02-11', { 'co2DryVolPct@high': 9.3 }, { kind: 'repair', startsBaseline: true }),
      pastRun('2025-10-02', { 'co2DryVolPct@high': 10.4 }, { fuel: 'propane' }),
    ];
    const [co2, ph] = trendSeries(runs, ['high']);
    expect(co2?.points.map(({ on, value, startsBaseline }) => `${on} ${value} ${startsBaseline}`)).toEqual([
      '2023-10-02 9.2 true',
      '2024-10-02 9 false',
      '2025-02-11 9.3 true',
      '2025-10-02 10.4 true',
    ]);
    expect(ph).toMatchObject({ trend: 'ph', point: null });
    expect(ph?.points).toHaveLength(1);
  });

  it('keeps what was found beside what was left only where the work changed it', () => {
    const readings = [
      ...readingsOf(
        { 'coPpm@high': 90, 'o2DryVolPct@high': 5 },
        { itemKey: 'a', measuredAt: '2026-10-01T09:00:00.000Z' },
      ),
      ...readingsOf(
        { 'coPpm@high': 28, 'o2DryVolPct@high': 5 },
        { itemKey: 'b', measuredAt: '2026-10-01T11:00:00.000Z' },
      ),
    ];
    const series = trendSeries([pastRun('2026-10-01', {}, { readings })], ['high']);
    expect(series.map(({ trend, points }) => [trend, points[0]?.value, points[0]?.foundValue])).toEqual([
      ['o2', 5, null],
      ['co', 28, 90],
    ]);
  });
});
