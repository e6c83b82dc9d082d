/** What the sheet of each appliance asks of whoever goes to it: the sheet that a visit begun now would keep. */
import type { ReadableDb } from '../../db/openStore.ts';
import { getRevisionById, listRevisionHeads } from '../../db/sheets.ts';
import type { FuelKey, ModelSheet } from '../../domain/procedure/modelSheet.ts';
import { DEMANDS_WITHOUT_SHEET, type WorkDemands, workDemandsOf } from '../../domain/schedule/workDemands.ts';

type Job = Parameters<typeof workDemandsOf>[0];

export type DemandsOf = (kind: Job, sheetId: string | null, fuel: FuelKey | null) => WorkDemands;

/** Each sheet is walked once for each kind of job, however many there are. */
export function readWorkDemands(db: ReadableDb): DemandsOf {
  const heads = listRevisionHeads(db);
  const known = new Map<string, WorkDemands>();
  const sheetOf = (revisionId: string): ModelSheet => getRevisionById(db, revisionId).body as ModelSheet;
  return (kind, sheetId, fuel) => {
    const key = JSON.stringify([kind, sheetId, fuel]);
    const demands = known.get(key) ?? ask();
    known.set(key, demands);
    return demands;

    function ask(): WorkDemands {
      const head =
        heads.find((one) => one.sheetId === sheetId) ??
        heads.find((one) => one.maker === null && sheetOf(one.id).fuels.some((of) => of.fuel === fuel));
      return head === undefined ? DEMANDS_WITHOUT_SHEET : workDemandsOf(kind, sheetOf(head.id));
    }
  };
}
