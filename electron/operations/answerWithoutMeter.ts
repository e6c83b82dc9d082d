/**
 * A site whose gas comes from a tank has said once that there is no meter to time: when the step that asks for it is
 * opened, those items are answered with that, as somebody would have typed it, and can be answered anew like any other.
 */
import { findSiteIdOfJob } from '../../db/placements.ts';
import { findStandingReadingId, listAnswers } from '../../db/runs.ts';
import { runAnswers } from '../../db/schema/index.ts';
import { findGasSupply } from '../../db/sites.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { meterItems } from '../../domain/procedure/meterItems.ts';
import type { SheetStep } from '../../domain/procedure/modelSheet.ts';
import { readTyped, storeReading } from './readingHandlers.ts';
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
  const { readings: read, confirmed, notes } = meterItems(step);
  const at = { visitId, runId, stepKey: step.key };
  for (const { key: itemKey, quantity, point } of read) {
    const place = { ...at, itemKey, quantity, point, sample: 1, measuredById: byId, typedById: byId };
    if (!isUnanswered(itemKey) || findStandingReadingId(writer.db, place) !== undefined) continue;
    const typed = readTyped(quantity, { typedText: '', typedUnit: '', notMeasuredReason: NO_METER });
    storeReading(writer, place, { ...typed, instrumentId: null, measuredAt: writer.now, origin: 'typed' });
  }
  for (const item of [...confirmed, ...notes].filter(({ key }) => isUnanswered(key)))
    writer.insert(runAnswers, {
      ...at,
      itemKey: item.key,
      value: item.kind === 'confirm' ? 'not-applicable' : null,
      reason: NO_METER,
      instrumentId: null,
      byId,
      at: writer.now,
    });
}
