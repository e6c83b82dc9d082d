/** Which of a sheet's lists a run walks: startups its startup, all else its service, or the startup where it has no service. */
import type { ModelSheet } from './modelSheet.ts';
import type { StepList } from './progressTypes.ts';
import type { RunRecord } from './runRecord.ts';

export function stepListOf(kind: RunRecord['kind'], sheet: Pick<ModelSheet, 'service'>): StepList {
  return kind === 'startup' || sheet.service.length === 0 ? 'startup' : 'service';
}
