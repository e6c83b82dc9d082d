import { describe, expect, it } from 'vitest';
import type { RecordedReading, RunRecord } from '../../../../domain/procedure/runRecord.ts';
import { modulationPoints } from '../../../../renderer/run/side/modulationPoints.ts';
import { judgementSheet } from '../../../support/judgementSheet.ts';
import { reading } from '../../../support/recordBuilder.ts';

const sheet = judgementSheet();
const pair = (itemKey: string, point: string, sample: number, minutes: number, powerPct: number, rpm: number) =>
  (
    [
      ['burnerPowerPct', powerPct],
      ['fanSpeedRpm', rpm],
    ] as const
  ).map(([quantity, value]) =>
    reading({
      quantity,
      value,
      itemKey,
      stepKey: 'any',
      point,
      sample,
      minutes,
      readingId: `${itemKey} ${quantity} ${sample}`,
    }),
  );
const tuning = (startedAt: string): RunRecord['tunings'][number] => ({
  itemKey: 'tuning',
  startedAt,
  stages: [],
  finishedAt: null,
  interruptedAt: null,
  interruptedReason: null,
});
const readings: readonly RecordedReading[] = [
  ...pair('tuning', 'tuning-high', 1, 5, 97, 5200),
  ...pair('tuning', 'tuning-high', 3, 20, 98, 5300),
  ...pair('tuning', 'tuning-low', 4, 25, 20, 1500),
  ...pair('combustion-high', 'high', 1, 40, 96, 5100),
  ...pair('combustion-high', 'high', 2, 42, 97, 5150),
];

describe('modulationPoints', () => {
  it('goes from the weakest stage up, with the newest sample of each firing point', () => {
    const points = modulationPoints({ readings, tunings: [tuning('2026-10-06T08:15:00.000Z')] }, sheet);
    expect(points.map(({ from, powerPct, fanRpm }) => `${from} ${powerPct} ${fanRpm}`)).toEqual([
      'tuning 20 1500',
      'combustion 97 5150',
      'tuning 98 5300',
    ]);
  });

  it('leaves out a half that was not read, and a run that was interrupted', () => {
    const half = readings.filter(({ quantity }) => quantity === 'fanSpeedRpm');
    expect(modulationPoints({ readings: half, tunings: [] }, sheet)).toEqual([]);
    const restarted = modulationPoints({ readings, tunings: [tuning('2026-10-06T09:30:00.000Z')] }, sheet);
    expect(restarted.map(({ from }) => from)).toEqual(['combustion']);
  });
});
