/** Whether a run's own clock can be true: shorter than its waits, out of order, photos from another time. For the owner to see. */
import type { RunRecord } from '../../procedure/runRecord.ts';
import { instantMs } from '../measured.ts';

export type VisitTimesProblem =
  | { readonly code: 'shorter-than-its-waits'; readonly tookS: number; readonly waitsS: number }
  | { readonly code: 'out-of-order'; readonly earlier: string; readonly later: string }
  | { readonly code: 'photo-from-another-time'; readonly attachmentId: string; readonly takenAt: string };

/** A photo may be taken when the boiler is hung up; one from the days before is of another state. */
const PHOTO_AROUND_S = 12 * 3600;

export function visitTimesProblems(record: RunRecord): readonly VisitTimesProblem[] {
  return [...shorterThanItsWaits(record), ...outOfOrder(record), ...strayPhotos(record)];
}

function shorterThanItsWaits(record: RunRecord): readonly VisitTimesProblem[] {
  const span = spanMs(record);
  if (span === null) return [];
  const tookS = (span.lastMs - span.firstMs) / 1000;
  const waitsS = record.holds.reduce((sum, hold) => sum + hold.requiredS, 0);
  return tookS < waitsS ? [{ code: 'shorter-than-its-waits', tookS, waitsS }] : [];
}

/** Nothing is read at a firing point before the burner first reached one. */
function outOfOrder(record: RunRecord): readonly VisitTimesProblem[] {
  return record.firingPoints.flatMap(({ firingPoint }) => {
    const reached = record.firingPoints.filter((one) => one.firingPoint === firingPoint).map((one) => one.reachedAt);
    const [first] = reached.toSorted();
    const early = record.readings.find(
      (one) =>
        one.point === firingPoint && first !== undefined && (instantMs(one.measuredAt) ?? 0) < (instantMs(first) ?? 0),
    );
    if (early === undefined || first === undefined) return [];
    return [{ code: 'out-of-order' as const, earlier: `firing point ${firingPoint}`, later: early.readingId }];
  });
}

function strayPhotos(record: RunRecord): readonly VisitTimesProblem[] {
  const span = spanMs(record);
  if (span === null) return [];
  return record.photos.flatMap(({ attachmentId, takenAt }) => {
    const ms = instantMs(takenAt);
    const around = PHOTO_AROUND_S * 1000;
    if (ms !== null && ms >= span.firstMs - around && ms <= span.lastMs + around) return [];
    return [{ code: 'photo-from-another-time' as const, attachmentId, takenAt }];
  });
}

function spanMs(record: RunRecord): { readonly firstMs: number; readonly lastMs: number } | null {
  const instants = [record.startedAt ?? '', ...record.readings.map((one) => one.measuredAt)].flatMap(
    (instant) => instantMs(instant) ?? [],
  );
  return instants.length < 2 ? null : { firstMs: Math.min(...instants), lastMs: Math.max(...instants) };
}
