/** What an amendment does to the judgement of the run it corrects: a healed stop is refused, a worse finding is told. */
import type { ReadableDb } from '../../db/openStore.ts';
import type { Verdict } from '../../domain/judgement/finding.ts';
import { type AmendedNumber, judgeAmendment } from '../../domain/judgement/judgeAmendment.ts';
import { parseTyped } from '../../domain/quantity/parseTyped.ts';
import { isQuantityKey } from '../../domain/quantity/quantities.ts';
import type { Revealed } from '../sealing/revealRecord.ts';
import type { SealedRecord } from '../sealing/sealedRecord.ts';
import { fail } from './handler.ts';
import { findItem, readPast, readRunState, stepsOf } from './runState.ts';

type OpenRecord = Revealed<SealedRecord>;
export type Judged = { readonly subject: string; readonly verdict: Verdict };
export type JudgedAmendment = { readonly isNow: string; readonly judged: readonly Judged[] };

/** Anything but a reading or a chosen answer is words, and nothing is judged by it. */
export function judgeAmended(
  db: ReadableDb,
  record: OpenRecord,
  amendment: { readonly path: string | null; readonly isNow: string },
  now: string,
): JudgedAmendment {
  const [, list, index] = /^\/run\/(readings|answers)\/(\d+)$/.exec(amendment.path ?? '') ?? [];
  if (list === 'readings') return judgeReading(db, record, Number(index), amendment.isNow, now);
  if (list === 'answers') return judgeAnswer(db, record, Number(index), amendment.isNow, now);
  return { isNow: amendment.isNow, judged: [] };
}

function judgeReading(db: ReadableDb, record: OpenRecord, index: number, isNow: string, now: string): JudgedAmendment {
  const reading = record.run.readings[index];
  if (reading === undefined || !isQuantityKey(reading.quantity)) return { isNow, judged: [] };
  const { quantity, typedUnit } = reading;
  const parsed = parseTyped(quantity, isNow, typedUnit);
  if (!parsed.ok) return fail('cannot-read', { problem: parsed.error });
  const { unit, valueOwn, comparator } = parsed.value;
  const state = readRunState(db, record.run.runId, record.visit.visitId, now);
  const { improves, worse } = judgeAmendment(
    { record: state.record, sheet: state.sheet, reopenedAt: state.run.reopenedAt, past: readPast(db, state) },
    earlierNumbers(record),
    { readingId: reading.readingId, valueOwn, comparator },
  );
  if (improves) return fail('needs-new-reading', {});
  // The unit is part of what is sealed, typed or not.
  const says = /[\p{L}%°]/u.test(isNow) ? isNow : `${isNow} ${unit}`.trim();
  const subjects = new Map(worse.map(({ subject, verdict }) => [`${subject} ${verdict}`, { subject, verdict }]));
  return { isNow: says, judged: [...subjects.values()] };
}

/** As amended before; words of an older amendment that are no number count for nothing. */
function earlierNumbers(record: OpenRecord): readonly AmendedNumber[] {
  return (record.seal.amendments ?? []).flatMap(({ path, isNow }) => {
    const index = /^\/run\/readings\/(\d+)$/.exec(path ?? '')?.[1];
    const reading = index === undefined ? undefined : record.run.readings[Number(index)];
    if (reading === undefined || !isQuantityKey(reading.quantity)) return [];
    const parsed = parseTyped(reading.quantity, isNow, reading.typedUnit);
    if (!parsed.ok) return [];
    const { valueOwn, comparator } = parsed.value;
    return [{ readingId: reading.readingId, valueOwn, comparator }];
  });
}

/** One of the sheet's answers, by its key or its words. A stop is not answered away afterwards. */
function judgeAnswer(db: ReadableDb, record: OpenRecord, index: number, isNow: string, now: string): JudgedAmendment {
  const answer = record.run.answers[index];
  const state = readRunState(db, record.run.runId, record.visit.visitId, now);
  const step = stepsOf(state).find(({ key }) => key === answer?.stepKey);
  const item = step === undefined || answer === undefined ? undefined : findItem(step, answer.itemKey);
  if (item?.kind !== 'choose') return { isNow, judged: [] };
  const named = (text: string) =>
    item.options.find(({ value, label }) => [value, label.toLowerCase()].includes(text.trim().toLowerCase()));
  const chosen = named(isNow) ?? fail('not-an-option', { value: isNow });
  const before = (record.seal.amendments ?? []).findLast(({ path }) => path === `/run/answers/${index}`)?.isNow;
  const was = named(before ?? answer?.value ?? '');
  if (was?.outcome === 'stop' && chosen.outcome !== 'stop') return fail('needs-new-reading', {});
  return { isNow, judged: chosen.outcome === 'stop' ? [{ subject: item.key, verdict: 'stop' }] : [] };
}
