/** Exports being made: one at a time, in memory only, since half an export is nothing. */
import { openExportSnapshot } from '../../../db/exports.ts';
import { type ExportFiles, type ExportStep, writeExport } from './exportFiles.ts';

export type ExportProgress =
  | { readonly isDone: false; readonly step: ExportStep }
  | { readonly isDone: true; readonly files: ExportFiles };

export type ExportRuns = {
  /** What stands in the store now is what will be given out. One that was still being made ends. */
  readonly start: (storePath: string, now: string) => { readonly exportId: string };
  /** Writes for a moment; undefined: it is not being made, or was stopped meanwhile. */
  readonly goOn: (exportId: string, forMs: number) => Promise<ExportProgress | undefined>;
  readonly stop: (exportId: string) => void;
  /** The store goes away, or another one comes. */
  readonly stopAll: () => void;
};

/** One that nobody asks on has been left: it must not hold the old state of the store for ever. */
const LEFT_AFTER_MS = 60_000;

type Run = { readonly id: string; readonly writing: ReturnType<typeof writeExport>; readonly close: () => void };

export function createExportRuns(leftAfterMs = LEFT_AFTER_MS): ExportRuns {
  let run: Run | null = null;
  let leftTimer: NodeJS.Timeout | undefined;

  function end(): void {
    clearTimeout(leftTimer);
    run?.close();
    run = null;
  }

  function waitForMore(): void {
    clearTimeout(leftTimer);
    leftTimer = setTimeout(end, leftAfterMs);
    leftTimer.unref();
  }

  return {
    start(storePath, now) {
      end();
      const snapshot = openExportSnapshot(storePath);
      run = { id: crypto.randomUUID(), writing: writeExport(snapshot, now), close: snapshot.close };
      waitForMore();
      return { exportId: run.id };
    },
    async goOn(exportId, forMs) {
      const going = run;
      if (going?.id !== exportId) return undefined;
      clearTimeout(leftTimer);
      const startMs = performance.now();
      try {
        for (;;) {
          const turn = await going.writing.next();
          if (run !== going) return undefined;
          if (turn.done === true) {
            end();
            return { isDone: true, files: turn.value };
          }
          if (performance.now() - startMs < forMs) continue;
          waitForMore();
          return { isDone: false, step: turn.value };
        }
      } catch (error) {
        // Stopped under its hands: the rows it was reading are gone.
        if (run !== going) return undefined;
        end();
        throw error;
      }
    },
    stop(exportId) {
      if (run?.id === exportId) end();
    },
    stopAll: end,
  };
}
