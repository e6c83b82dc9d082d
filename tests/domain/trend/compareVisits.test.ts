import { describe, expect, it } from 'vitest';
import { compareVisits } from '../../../domain/trend/compareVisits.ts';
import type { PastReading } from '../../../domain/trend/pastRun.ts';
import { seenSymptoms } from '../../../domain/trend/seenSymptoms.ts';
import { pastRun, type ReadAs, readingsOf } from './pastRuns.ts';

const GOOD: ReadAs = {
  'o2DryVolPct@high': 4.5,
  'co2DryVolPct@high': 9.2,
  'coPpm@high': 30,
  'flueGasC@high': 58,
  'returnC@high': 50,
  'supplyC@high': 65,
  'systemPressureBarG@cold': 1.3,
  'systemPressureBarG@hot': 1.6,
  'waterPh@after': 8.1,
};
const startup = pastRun('2023-10-02', GOOD, { kind: 'startup', startsBaseline: true });
const lastYear = pastRun('2025-10-09', { ...GOOD, 'co2DryVolPct@high': 9.0 });

function compared(now: ReadAs, past = [startup, lastYear], more: Partial<PastReading> = {}) {
  return compareVisits({
    past,
    fuel: 'natural-gas',
    readings: readingsOf({ ...GOOD, ...now }, more),
    firingPoints: ['high', 'low'],
    state: 'found',
  });
}
const rowOf = (rows: ReturnType<typeof compared>, trend: string) => rows.find((row) => row.trend === trend);
const keys = (rows: ReturnType<typeof compared>) =>
  seenSymptoms(rows, ['high', 'low']).map(({ symptom, point, against }) => `${symptom.key} ${point} ${against}`);

describe('compareVisits', () => {
  it('puts the baseline, the last visit and now side by side', () => {
    const co2 = rowOf(compared({ 'co2DryVolPct@high': 8.6 }), 'co2');
    expect(co2?.baseline).toMatchObject({ earlier: { on: '2023-10-02', value: { value: 9.2 } }, movement: 'down' });
    expect(co2?.last).toMatchObject({ earlier: { on: '2025-10-09', value: { value: 9.0 } }, movement: 'same' });
    expect(co2?.now.value).toBe(8.6);
  });

  it('has one column where the baseline is the last visit', () => {
    expect(rowOf(compared({}, [startup]), 'co2')).toMatchObject({ last: null, baseline: { movement: 'same' } });
  });

  it('works out what the table of symptoms asks for', () => {
    const rows = compared({ 'flueGasC@high': 72, 'systemPressureBarG@hot': 2.1 });
    expect(rowOf(rows, 'flue-over-return')).toMatchObject({ now: { value: 22 }, last: { movement: 'up' } });
    expect(rowOf(rows, 'pressure-rise')?.now.value).toBeCloseTo(0.8, 10);
    expect(rowOf(rows, 'delta-t')?.now.value).toBe(15);
  });

  it('does not compare temperatures taken at another return, but the mixture, and says so', () => {
    const rows = compared({ 'returnC@high': 40, 'flueGasC@high': 45, 'co2DryVolPct@high': 8.0 });
    expect(rowOf(rows, 'flue-over-return')?.last).toMatchObject({
      movement: null,
      obstacles: ['other-return-temperature'],
    });
    expect(rowOf(rows, 'co2')?.last).toMatchObject({ movement: 'down', caveats: ['other-return-temperature'] });
  });

  it('says when another instrument read it', () => {
    expect(rowOf(compared({}, [startup, lastYear], { instrumentId: 'other' }), 'ph')?.last?.caveats).toEqual([
      'other-instrument',
    ]);
    expect(rowOf(compared({}, [startup, lastYear], { instrumentId: null }), 'ph')?.last?.caveats).toEqual([
      'other-instrument',
    ]);
  });

  it('begins anew after a change that makes a new baseline, and after another fuel', () => {
    const changed = pastRun('2024-11-20', GOOD, { kind: 'repair', startsBaseline: true });
    expect(rowOf(compared({}, [startup, changed, lastYear]), 'co2')?.baseline?.earlier.on).toBe('2024-11-20');
    const onPropane = pastRun('2024-01-01', GOOD, { fuel: 'propane' });
    expect(rowOf(compared({}, [startup, onPropane, lastYear]), 'co2')?.baseline?.earlier.on).toBe('2025-10-09');
    expect(rowOf(compared({}, [startup, lastYear, onPropane]), 'co2')?.baseline).toBeNull();
  });

  it('holds what was found against how it was left, each by its own item', () => {
    const twice = [
      ...readingsOf({ 'coPpm@high': 90 }, { itemKey: 'as-found', measuredAt: '2026-10-01T09:00:00.000Z' }),
      ...readingsOf({ 'coPpm@high': 28 }, { itemKey: 'as-left', measuredAt: '2026-10-01T11:00:00.000Z' }),
    ];
    const common = { past: [startup], fuel: 'natural-gas', readings: twice, firingPoints: ['high'] } as const;
    expect(compareVisits({ ...common, state: 'found' })[0]?.now.value).toBe(90);
    expect(compareVisits({ ...common, state: 'left' })[0]?.now.value).toBe(28);
    // Next year the 28 it was left with is what counts, not the 90 it was found with.
    const thisYear = pastRun('2026-10-01', {}, { readings: twice });
    const next = compareVisits({ ...common, past: [startup, thisYear], readings: readingsOf({}), state: 'found' });
    expect(next).toEqual([]);
    const again = compareVisits({
      ...common,
      past: [thisYear],
      readings: readingsOf({ 'coPpm@high': 60 }),
      state: 'found',
    });
    expect(again[0]?.baseline?.earlier.value.value).toBe(28);
  });
});

describe('seenSymptoms', () => {
  it('finds nothing where nothing moved', () => {
    expect(keys(compared({}))).toEqual([]);
  });

  it('tells a lean mixture at its firing point', () => {
    expect(keys(compared({ 'co2DryVolPct@high': 8.3, 'o2DryVolPct@high': 6.1 }))).toEqual(['leaner high last']);
  });

  it('tells too rich with CO and CO₂ both up', () => {
    expect(keys(compared({ 'co2DryVolPct@high': 9.9, 'coPpm@high': 70 }))).toEqual(['too-rich high last']);
  });

  it('tells what only the years have added up to', () => {
    expect(keys(compared({ 'co2DryVolPct@high': 8.6 }))).toEqual(['leaner high baseline']);
  });

  it.each([
    [{ 'flueGasC@high': 72, 'co2DryVolPct@high': 9.0 }, 'flue-over-return-up high last'],
    [{ 'systemPressureBarG@hot': 2.0 }, 'hot-pressure-higher null last'],
    [{ 'systemPressureBarG@cold': 0.9, 'systemPressureBarG@hot': 1.2 }, 'both-pressures-lower null last'],
    [{ 'systemPressureBarG@cold': 0.9, 'systemPressureBarG@hot': 1.6 }, 'relief-lifting null last'],
    [{ 'waterPh@after': 7.2 }, 'ph-down null last'],
  ] satisfies readonly (readonly [ReadAs, string])[])('tells %j as %s', (now, expected) => {
    expect(keys(compared(now))).toEqual([expected]);
  });

  it('names the numbers that speak for it', () => {
    const [seen] = seenSymptoms(compared({ 'co2DryVolPct@high': 9.9, 'coPpm@high': 70 }), ['high']);
    expect(seen?.rows.map(({ row }) => row.trend).toSorted()).toEqual(['co', 'co2']);
  });
});
