/** The runs the signed-in person has under way: visits begun, not finished, not sealed. */
import { useAppStatus, useHasRole, useSignedIn } from '../../operations/AppStatus.tsx';
import { useOperation } from '../../operations/useOperation.ts';
import { addDays } from '../../visits/week.ts';

export type OpenRun = { readonly visitId: string; readonly runId: string; readonly words: string };

export function useOpenRuns(): readonly OpenRun[] {
  const { today } = useAppStatus();
  const { staffId } = useSignedIn();
  const mayRecord = useHasRole('technician', 'helper', 'owner');
  // A visit is finished within weeks of the day it was planned for, or never.
  const span = { from: addDays(today, -LONGEST_VISIT_DAYS), to: addDays(today, 1) };
  const visits = useOperation('visits.list', { ...span, staffId }, { isWanted: mayRecord });
  if (visits.state !== 'ready') return [];
  return visits.value
    .filter(({ state }) => state === 'started')
    .flatMap(({ visitId, customerName, street, jobs }) =>
      jobs.flatMap(({ runId, isSealed, model }) =>
        runId === null || isSealed ? [] : [{ visitId, runId, words: `${customerName}, ${street}: ${model}` }],
      ),
    );
}

const LONGEST_VISIT_DAYS = 120;
