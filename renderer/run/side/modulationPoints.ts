/** Fan speed against power, as shown: the stages of the newest tuning run, and where the combustion readings sit. */
import type { ModelSheet } from '../../../domain/procedure/modelSheet.ts';
import type { RecordedReading, RunRecord } from '../../../domain/procedure/runRecord.ts';
import { stagePoint } from '../../../domain/procedure/stagePoint.ts';

export type ModulationPoint = {
  readonly key: string;
  readonly label: string;
  readonly powerPct: number;
  readonly fanRpm: number;
  readonly from: 'tuning' | 'combustion';
};

export function modulationPoints(
  record: Pick<RunRecord, 'readings' | 'tunings'>,
  sheet: Pick<ModelSheet, 'startup' | 'service' | 'repair' | 'firingPoints'>,
): readonly ModulationPoint[] {
  const items = [...sheet.startup, ...sheet.service, ...(sheet.repair ?? [])].flatMap((step) => step.items);
  const stages = new Map(
    items.flatMap((item) =>
      item.kind === 'tuning'
        ? item.stages.map((stage) => [`${item.key} ${stagePoint(stage.key)}`, stage.label] as const)
        : [],
    ),
  );
  const begun = new Map(record.tunings.map((run) => [run.itemKey, run.startedAt]));
  const live = record.readings.filter((one) => one.supersededById === null && one.valueOwn !== null);
  const pairs = Map.groupBy(live, ({ itemKey, point, sample }) => `${itemKey} ${point} ${sample}`);
  const points = [...pairs.values()].flatMap((readings) => pointOf(readings, stages, begun, sheet.firingPoints));
  // Of several samples at one place the newest tells where it sits.
  const newest = new Map(points.map((point) => [point.key, point]));
  return [...newest.values()].sort((one, other) => one.powerPct - other.powerPct);
}

function pointOf(
  readings: readonly RecordedReading[],
  stages: ReadonlyMap<string, string>,
  begun: ReadonlyMap<string, string>,
  firingPoints: ModelSheet['firingPoints'],
): readonly ModulationPoint[] {
  const value = (quantity: RecordedReading['quantity']) => readings.find((one) => one.quantity === quantity)?.valueOwn;
  const [powerPct, fanRpm] = [value('burnerPowerPct'), value('fanSpeedRpm')];
  const [first] = readings;
  if (first?.point == null || powerPct == null || fanRpm == null) return [];
  const key = `${first.itemKey} ${first.point}`;
  const stage = stages.get(key);
  if (stage !== undefined) {
    // Written down for a run that was interrupted: not this one's.
    const isOld = first.measuredAt < (begun.get(first.itemKey) ?? '');
    return isOld ? [] : [{ key, label: stage, powerPct, fanRpm, from: 'tuning' }];
  }
  const firingPoint = firingPoints.find((one) => one.key === first.point);
  return firingPoint === undefined ? [] : [{ key, label: firingPoint.label, powerPct, fanRpm, from: 'combustion' }];
}
