/** Takes everything an import wrote out again, a piece at a time, unless later work hangs on it. */
import { listImportedRows, listLaterWork, readImportedRows } from '../../../db/importedRows.ts';
import type { ImportRecord } from '../../../db/imports.ts';
import type { LongWrite } from '../../../db/longWrite.ts';
import { imports } from '../../../db/schema/index.ts';
import { fail } from '../handler.ts';
import type { ImportCounts } from './keepImport.ts';
import type { ListResult, ListStep } from './listWorks.ts';

export function* takeOut(
  { raw, writer }: LongWrite,
  record: ImportRecord,
  undoneById: string,
): Generator<ListStep, ListResult> {
  const rowCount = readImportedRows(raw, record);
  const looking = listLaterWork(raw, record);
  let looked = looking.next();
  for (; looked.done !== true; looked = looking.next()) yield { doing: 'looking', ...looked.value };
  if (looked.value.length > 0) fail('later-work', { hangsOn: [...looked.value] });
  let done = 0;
  for (const rows of listImportedRows(raw, record)) {
    for (const { table, entityId } of rows) {
      writer.remove(table, entityId);
      done += 1;
      yield { doing: 'rows', done, of: rowCount };
    }
  }
  writer.update(imports, record.id, { undoneById, undoneAt: writer.now });
  return { importId: record.id, counts: record.counts as ImportCounts };
}
