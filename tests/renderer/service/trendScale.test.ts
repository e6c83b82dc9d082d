import { describe, expect, it } from 'vitest';
import { trendSeries } from '../../../domain/trend/trendSeries.ts';
import { trendScale } from '../../../renderer/service/trendScale.ts';
import { pastRun, type ReadAs } from '../../domain/trend/pastRuns.ts';
import { judgementSheet } from '../../support/judgementSheet.ts';

const { limits } = judgementSheet();
const scaleOf = (trend: string, values: ReadAs) => {
  const runs = [pastRun('2023-10-02', values), pastRun('2025-10-02', values)];
  const series = trendSeries(runs, ['high', 'low']).find((one) => one.trend === trend);
  return series === undefined ? null : trendScale(series, limits, 'metric');
};

describe('trendScale', () => {
  it('has the limits of the sheet at this point and for this fuel', () => {
    expect(scaleOf('co2', { 'co2DryVolPct@low': 8.8 })).toMatchObject({ min: 8.0, max: 9.6 });
    expect(scaleOf('cold-pressure', { 'systemPressureBarG@cold': 1.3 })).toMatchObject({ min: 1, max: 1.8 });
  });

  it('has none where the sheet sets none, and none for what follows from two readings', () => {
    expect(scaleOf('co', { 'coPpm@high': 40 })).toMatchObject({ min: null, max: null });
    expect(scaleOf('pressure-rise', { 'systemPressureBarG@cold': 1.3, 'systemPressureBarG@hot': 1.6 })).toMatchObject({
      min: null,
      max: null,
    });
  });

  it('goes from the first visit to the last one, with the years between, and holds everything drawn', () => {
    const scale = scaleOf('co2', { 'co2DryVolPct@high': 11 });
    expect(scale?.years.map(({ text }) => text)).toEqual(['2024', '2025']);
    const [from = 1, to = 0] = [scale?.shareOf('2023-10-02'), scale?.shareOf('2025-10-02')];
    expect(from).toBeGreaterThan(0);
    expect(to).toBeGreaterThan(from);
    expect(to).toBeLessThan(1);
    expect(scale?.low).toBeLessThan(8.4);
    expect(scale?.high).toBeGreaterThan(11);
  });

  it('can be drawn where every visit read the same', () => {
    const scale = scaleOf('ph', { 'waterPh@after': 0 });
    expect((scale?.high ?? 0) - (scale?.low ?? 0)).toBeGreaterThan(0);
  });
});
