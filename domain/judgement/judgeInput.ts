/** What the judgement needs to know. The clock and the place come in as data. */
import type { ModelSheet } from '../procedure/modelSheet.ts';
import type { RunRecord } from '../procedure/runRecord.ts';
import type { PastRun } from '../trend/pastRun.ts';

export type JudgeInput = {
  readonly record: RunRecord;
  readonly sheet: ModelSheet;
  /** Absent: the site's own. */
  readonly jurisdiction?: string;
  /** When the run was last taken up again after being left: what has grown too old by then is not proven. */
  readonly reopenedAt?: string | null;
  /** Earlier runs on the same appliance, oldest first; absent: nothing is compared. */
  readonly past?: readonly PastRun[];
};
