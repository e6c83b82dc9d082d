/** Which of a sheet's lists a run walks: startups its startup, repairs its repair, all else its service; where it has no such list, the one before. */
import type { ModelSheet } from './modelSheet.ts';
import type { StepList } from './progressTypes.ts';
import type { RunRecord } from './runRecord.ts';

export function stepListOf(kind: RunRecord['kind'], sheet: Pick<ModelSheet, 'service' | 'repair'>): StepList {
  if (kind === 'repair' && (sheet.repair?.length ?? 0) > 0) return 'repair';
  return kind === 'startup' || sheet.service.length === 0 ? 'startup' : 'service';
}

/** The steps of one of a sheet's lists; none where it has no such list. */
export function stepsOfList(sheet: Pick<ModelSheet, StepList>, list: StepList): ModelSheet['startup'] {
  return sheet[list] ?? [];
}
