/** Putting visits and jobs where they were dropped, each with the way back kept for undo. */
import { useCallback, useState } from 'react';
import { boardStart } from '../../domain/schedule/wallClock.ts';
import type { ErrorsOf } from '../../electron/contract/index.ts';
import { clockWords, dayWords } from '../kit/dayWords.ts';
import { useAct } from '../operations/useAct.ts';
import type { BoardData } from './boardModel.ts';
import type { Carried } from './carryStore.ts';

type Names = 'visits.place' | 'visits.book' | 'visits.cancel' | 'visits.bringBack';
type Done = { readonly label: string; readonly undo: () => Promise<boolean> };

export type BoardActs = {
  /** The visit that now lies there; null: it was refused and nothing changed. */
  readonly drop: (data: BoardData, carried: Carried) => Promise<string | null>;
  /** Off the board: its jobs wait again. true: done. */
  readonly takeOff: (visit: { readonly visitId: string; readonly title: string }, reason: string) => Promise<boolean>;
  readonly undo: () => Promise<void>;
  /** What undo would take back. */
  readonly undoLabel: string | null;
  readonly error: ErrorsOf<Names> | null;
  readonly clearError: () => void;
  readonly said: string;
};

const KEPT_STEPS = 50;

export function useBoardActs(): BoardActs {
  const place = useAct('visits.place');
  const book = useAct('visits.book');
  const cancel = useAct('visits.cancel');
  const bringBack = useAct('visits.bringBack');
  const [done, setDone] = useState<readonly Done[]>([]);
  const [error, setError] = useState<ErrorsOf<Names> | null>(null);
  const [said, setSaid] = useState('');
  const remember = useCallback((step: Done) => {
    setDone((before) => [...before.slice(-KEPT_STEPS + 1), step]);
    setSaid(`${step.label}.`);
    setError(null);
  }, []);

  const { act: placeVisit } = place;
  const { act: bookJob } = book;
  const { act: cancelVisit } = cancel;
  const { act: bringVisitBack } = bringBack;

  const drop = useCallback(
    async (data: BoardData, carried: Carried): Promise<string | null> => {
      const { what, on, startMin, staffId, durationMin } = carried;
      const where = `${carried.title}: ${dayWords(on, { weekday: true })}, ${clockWords(startMin)}`;
      if (what.kind === 'visit') {
        const visit = data.visits.find(({ visitId }) => visitId === what.visitId);
        if (visit === undefined) return null;
        const isThere = visit.plannedOn === on && boardStart(visit) === startMin && what.fromStaffId === staffId;
        if (isThere) return visit.visitId;
        const reply = await placeVisit({
          visitId: visit.visitId,
          baseRevision: visit.revision,
          plannedOn: on,
          startMin,
          durationMin,
          moveCrew: what.fromStaffId === staffId ? null : { fromStaffId: what.fromStaffId, toStaffId: staffId },
        });
        if (!reply.ok) {
          setError(reply.error);
          return null;
        }
        const { revision } = reply.value;
        remember({
          label: `Moved ${where}`,
          undo: async () => {
            const back = await placeVisit({
              visitId: visit.visitId,
              baseRevision: revision,
              plannedOn: visit.plannedOn,
              startMin: visit.startMin,
              durationMin: visit.durationMin,
              moveCrew: what.fromStaffId === staffId ? null : { fromStaffId: staffId, toStaffId: what.fromStaffId },
            });
            if (!back.ok) setError(back.error);
            return back.ok;
          },
        });
        return visit.visitId;
      }
      const job = data.unplaced.find(({ jobId }) => jobId === what.jobId);
      if (job === undefined) return null;
      const reply = await bookJob({
        jobIds: [job.jobId],
        plannedOn: on,
        plannedFrom: null,
        plannedTo: null,
        startMin,
        durationMin,
        crew: [{ staffId, role: 'licensed' }],
        isPencilled: job.openReadiness.length > 0,
        note: null,
      });
      if (!reply.ok) {
        setError(reply.error);
        return null;
      }
      const { visitId } = reply.value;
      remember({
        label: `${job.openReadiness.length > 0 ? 'Pencilled in' : 'Booked'} ${where}`,
        undo: async () => {
          const back = await cancelVisit({ visitId, reason: 'taken back on the board' });
          if (!back.ok) setError(back.error);
          return back.ok;
        },
      });
      return visitId;
    },
    [placeVisit, bookJob, cancelVisit, remember],
  );

  const takeOff = useCallback(
    async ({ visitId, title }: { readonly visitId: string; readonly title: string }, reason: string) => {
      const reply = await cancelVisit({ visitId, reason });
      if (!reply.ok) {
        setError(reply.error);
        return false;
      }
      remember({
        label: `Cancelled ${title}`,
        undo: async () => {
          const back = await bringVisitBack({ visitId });
          if (!back.ok) setError(back.error);
          return back.ok;
        },
      });
      return true;
    },
    [cancelVisit, bringVisitBack, remember],
  );

  const undo = useCallback(async () => {
    const last = done.at(-1);
    if (last === undefined) return;
    if (!(await last.undo())) return;
    setDone((before) => before.slice(0, -1));
    setSaid(`Taken back: ${last.label}.`);
    setError(null);
  }, [done]);

  return {
    drop,
    takeOff,
    undo,
    undoLabel: done.at(-1)?.label ?? null,
    error,
    clearError: () => setError(null),
    said,
  };
}
