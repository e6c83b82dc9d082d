/** When work is over that starts at a minute; null: a closed span is in its way. */
import { LONGEST_PAUSE_MIN, type PlanVisit, type TimeSpan } from '../planningProblem.ts';

export function endOfWork(
  closed: readonly TimeSpan[],
  startMin: number,
  { durationMin, mayPause }: Pick<PlanVisit, 'durationMin' | 'mayPause'>,
): number | null {
  let over = startMin + durationMin;
  for (const span of closed) {
    if (startMin >= span.toMin || over <= span.fromMin) continue;
    const length = span.toMin - span.fromMin;
    if (!mayPause || startMin >= span.fromMin || length > LONGEST_PAUSE_MIN) return null;
    over += length;
  }
  return over;
}
