/** Whether this run asks for an item at all: the sheet may keep it to a fuel, an emitter or an earlier answer. */
import type { Finding, Verdict } from '../../judgement/finding.ts';
import { changedParts } from '../changedParts.ts';
import { CONVERTED } from '../conversion.ts';
import type { ModelSheet, StepItem } from '../modelSheet.ts';
import type { RecordByItem } from './recordByItem.ts';

/** `unknown`: the answer it depends on has not been given yet. */
export type Asked = 'yes' | 'no' | 'unknown';

export function isAsked(
  item: StepItem,
  byItem: RecordByItem,
  sheet: Pick<ModelSheet, 'parts'>,
  answerItemIsAsked: boolean,
  isOtherFuel: boolean,
  findings: readonly Finding[],
): Asked {
  const condition = item.onlyFor;
  if (condition === undefined) return 'yes';
  const { record } = byItem;
  if (condition.fuels !== undefined && !condition.fuels.includes(record.fuel)) return 'no';
  // A site whose emitters nobody has noted down yet is asked about all of them: missing is not none.
  const emitters = record.site.emitters;
  if (condition.emitters !== undefined && emitters.length > 0) {
    if (!condition.emitters.some((one) => emitters.includes(one))) return 'no';
  }
  if (condition.changedPart !== undefined && changedParts(record, sheet, condition.changedPart).length === 0)
    return 'no';
  if (condition.foundOutside !== undefined) {
    const found = wasFoundOutside(condition.foundOutside, byItem, findings);
    if (found !== 'yes') return found;
  }
  if (condition.answer === undefined) return 'yes';
  if (!answerItemIsAsked) return 'no';
  // A plate for another fuel says that it was converted: its proof is asked for whatever the answer was.
  if (isOtherFuel && condition.answer.is.includes(CONVERTED)) return 'yes';
  const answer = byItem.answer(condition.answer.item);
  if (answer === undefined) return 'unknown';
  // "Not possible" tells nothing about what it stood for, so the question that hangs on it is asked.
  return answer.value === null || condition.answer.is.includes(answer.value) ? 'yes' : 'no';
}

const NOT_WITHIN: readonly Verdict[] = ['outside', 'stop', 'cannot-tell-apart'];

/** By the reading itself, whatever else was computed from it. One that was not possible says nothing, and there is nothing to put right. */
function wasFoundOutside(itemKey: string, byItem: RecordByItem, findings: readonly Finding[]): Asked {
  const found = byItem.lastReading(itemKey);
  if (found === undefined) return byItem.answer(itemKey) === undefined ? 'unknown' : 'no';
  return findings.some(({ readingId, verdict }) => readingId === found.readingId && NOT_WITHIN.includes(verdict))
    ? 'yes'
    : 'no';
}
