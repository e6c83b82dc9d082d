/** Whether anything that stands for an item was copied from paper rather than recorded in the app. */
import type { RunRecord } from './runRecord.ts';

export function isFromPaper(record: RunRecord, itemKey: string): boolean {
  const isOfItem = (one: { readonly itemKey: string }) => one.itemKey === itemKey;
  const marked = [record.answers, record.holds, record.tunings, record.signOffs].flatMap((list) => {
    const newest = list.filter(isOfItem).at(-1);
    return newest === undefined ? [] : [newest];
  });
  return (
    marked.some((one) => one.transcribed != null) ||
    record.readings.some((one) => isOfItem(one) && one.supersededById === null && one.origin === 'transcribed')
  );
}
