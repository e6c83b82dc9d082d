/**
 * Judges one reading as it is typed, by the same rules as the whole run: what is said of the reading itself and of
 * everything computed from it. Called each time a field is left.
 */
import type { RecordedReading } from '../procedure/runRecord.ts';
import type { Finding } from './finding.ts';
import type { JudgeInput } from './judgeInput.ts';
import { judgeRunAbout } from './judgeRun.ts';

/** The reading need not be in the record yet; if it is, this one stands in for it. */
export function judgeReading(input: JudgeInput & { readonly reading: RecordedReading }): readonly Finding[] {
  const { reading, record } = input;
  const others = record.readings.filter((one) => one.readingId !== reading.readingId);
  return judgeRunAbout({ ...input, record: { ...record, readings: [...others, reading] } }, reading.readingId);
}
