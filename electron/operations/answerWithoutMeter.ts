/**
 * A site whose gas comes from a tank has said once that there is no meter to time: when the step that asks for it is
 * opened, those items are answered with that, as somebody would have typed it, and can be answered anew like any other.
 */
import { findSiteIdOfJob } from '../../db/placements.ts';
import { findStandingReadingId, listAnswers } from '../../db/runs.ts';
import { readings, runAnswers } from '../../db/schema/index.ts';
import { findGasSupply } from '../../db/sites.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { meterItems } from '../../domain/procedure/meterItems.ts';
import type { SheetStep } from '../../domain/procedure/modelSheet.ts';
import type { RunRef } from './runGuards.ts';
import type { LoadedRun } from './runState.ts';

const NO_METER = 'No gas meter: the site’s gas comes from a tank';

export function answerWithoutMeter(
  writer: StoreWriter,
  { visitId, runId }: RunRef,
  { job }: Pick<LoadedRun, 'job'>,
  step: SheetStep,
  byId: string,
): void {
  const siteId = findSiteIdOfJob(writer.db, job);
  if (siteId === undefined || findGasSupply(writer.db, siteId)?.kind !== 'tank') return;
  const isUnanswered = (itemKey: string): boolean => listAnswers(writer.db, runId, itemKey).length === 0;
  const { readings: read, confirmed } = meterItems(step);
  const at = { visitId, runId, stepKey: step.key };
  for (const item of read) {
    const place = { runId, itemKey: item.key, quantity: item.quantity, sample: 1 };
    if (!isUnanswered(item.key) || findStandingReadingId(writer.db, place) !== undefined) continue;
    writer.insert(readings, {
      ...at,
      itemKey: item.key,
      quantity: item.quantity,
      point: item.point,
      sample: 1,
      typedText: '',
      typedUnit: '',
      valueOwn: null,
      comparator: '=',
      notMeasuredReason: NO_METER,
      instrumentId: null,
      measuredById: byId,
      typedById: byId,
      measuredAt: writer.now,
      typedAt: writer.now,
      origin: 'typed',
    });
  }
  for (const item of confirmed.filter(({ key }) => isUnanswered(key)))
    writer.insert(runAnswers, {
      ...at,
      itemKey: item.key,
      value: 'not-applicable',
      reason: NO_METER,
      instrumentId: null,
      byId,
      at: writer.now,
    });
}
