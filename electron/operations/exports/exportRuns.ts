/** Exports being made: one at a time. Half an export is nothing: what was put aside of it goes with it. */
import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { writeDurably } from '../../../db/attachmentFiles.ts';
import { type ExportChoice, openExportSnapshot } from '../../../db/exports.ts';
import { type ExportFiles, type ExportStep, type FilesTaken, writeExport } from './exportFiles.ts';

export type ExportProgress =
  | { readonly isDone: false; readonly step: ExportStep }
  /** `takeFileZips` gives the ZIPs of photos and documents one after the other; nothing of them stays here. */
  | { readonly isDone: true; readonly files: ExportFiles; readonly takeFileZips: () => Generator<Uint8Array> };

export type ExportOrder = {
  readonly storePath: string;
  readonly now: string;
  readonly choice: ExportChoice;
  readonly readFile: FilesTaken['read'];
  /** For what does not fit into memory; emptied at the beginning and at the end. */
  readonly asideFolder: string;
  /** Smaller ones only in tests. */
  readonly zipBytes?: number;
};

export type ExportRuns = {
  /** What stands in the store now is what will be given out. One that was still being made ends. */
  readonly start: (order: ExportOrder) => { readonly exportId: string };
  /** Writes for a moment; undefined: it is not being made, or was stopped meanwhile. */
  readonly goOn: (exportId: string, forMs: number) => Promise<ExportProgress | undefined>;
  readonly stop: (exportId: string) => void;
  /** The store goes away, or another one comes. */
  readonly stopAll: () => void;
};

/** In the data folder, emptied at every start too: a kill must not leave personal data lying about. */
export const ASIDE_FOLDER = 'export-being-made';

/** One that nobody asks on has been left: it must not hold the old state of the store for ever. */
const LEFT_AFTER_MS = 60_000;

type Run = {
  readonly id: string;
  readonly writing: ReturnType<typeof writeExport>;
  readonly aside: readonly string[];
  /** Once it is written: whoever could not keep it asks again. */
  result: ExportFiles | null;
  readonly close: () => void;
};

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

  /** Read one after the other: together they may not fit into memory. */
  function* takeAndEnd({ id, aside }: Run): Generator<Uint8Array> {
    try {
      for (const path of aside) yield readFileSync(path);
    } finally {
      if (run?.id === id) end();
    }
  }

  return {
    start({ storePath, now, choice, readFile, asideFolder, zipBytes }) {
      end();
      rmSync(asideFolder, { recursive: true, force: true });
      const snapshot = openExportSnapshot(storePath, choice);
      const aside: string[] = [];
      const keep = (zip: Uint8Array): void => {
        const path = join(asideFolder, `${aside.length + 1}.zip`);
        writeDurably(path, zip);
        aside.push(path);
      };
      run = {
        id: crypto.randomUUID(),
        writing: writeExport(snapshot, now, { read: readFile, keep, ...(zipBytes === undefined ? {} : { zipBytes }) }),
        aside,
        result: null,
        close() {
          snapshot.close();
          rmSync(asideFolder, { recursive: true, force: true });
        },
      };
      waitForMore();
      return { exportId: run.id };
    },
    async goOn(exportId, forMs) {
      const going = run;
      if (going?.id !== exportId) return undefined;
      const { result } = going;
      if (result !== null) return { isDone: true, files: result, takeFileZips: () => takeAndEnd(going) };
      clearTimeout(leftTimer);
      const startMs = performance.now();
      try {
        for (;;) {
          const turn = await going.writing.next();
          if (run !== going) return undefined;
          if (turn.done === true) {
            going.result = turn.value;
            waitForMore();
            return { isDone: true, files: turn.value, takeFileZips: () => takeAndEnd(going) };
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
