/** Ends a hold when its time is over, wherever in the run the technician is by then, and lets it be heard. */
import { useEffect, useRef } from 'react';
import { stepListOf, stepsOfList } from '../../../domain/procedure/stepListOf.ts';
import type { RunView } from '../../../electron/contract/runs.ts';
import type { Write } from '../state/RunContext.ts';
import { soundEnd } from './soundEnd.ts';
import { useNow } from './useNow.ts';

export function useHoldKeeper(view: RunView, write: Write): void {
  const now = Date.parse(useNow(500));
  const ended = useRef(new Set<string>());
  const over = view.record.holds.filter(
    (hold) => hold.endedAt === null && now - Date.parse(hold.startedAt) >= hold.requiredS * 1000,
  );
  const [first] = over;
  const key = first === undefined ? null : `${first.itemKey} ${first.startedAt}`;
  useEffect(() => {
    if (key === null || first === undefined || view.sealedSha256 !== null || ended.current.has(key)) return;
    ended.current.add(key);
    const step = stepsOfList(view.sheet, stepListOf(view.record.kind, view.sheet)).find((one) =>
      one.items.some((item) => item.key === first.itemKey),
    );
    if (step === undefined) return;
    soundEnd();
    void write('visits.endHold', {
      visitId: view.visitId,
      runId: view.runId,
      stepKey: step.key,
      itemKey: first.itemKey,
    }).then((reply) => {
      // Half a second early by the core's clock: the next tick asks again.
      if (!reply.ok && reply.error.code === 'hold-not-over') ended.current.delete(key);
    });
  }, [key, first, view, write]);
}
