/** The customers of an earlier program: brought as CSV, read, and taken in where nothing in it was wrong. */
import type { Store } from '../../db/openStore.ts';
import { attachments } from '../../db/schema/index.ts';
import { unwrap } from '../../domain/result.ts';
import { csvFile, csvText } from '../documents/csvCell.ts';
import { firstMapping } from '../operations/imports/importHandlers.ts';
import { keepImport } from '../operations/imports/keepImport.ts';
import { planImport } from '../operations/imports/planImport.ts';
import { readText } from '../operations/imports/readTable.ts';
import { type Ids, idOf } from './ids.ts';
import type { LoadOptions } from './loadScenario.ts';
import type { Scenario } from './scenario.ts';

export function addLists(store: Store, data: Scenario, ids: Ids, { putFile }: Pick<LoadOptions, 'putFile'>): void {
  const broughtById = idOf(ids, 'dispatcher');
  for (const { fileName, broughtAt, isTakenIn, rows } of data.lists) {
    const bytes = new TextEncoder().encode(csvFile(rows.map((cells) => cells.map(csvText))));
    const table = unwrap(readText(bytes));
    const mapping = firstMapping(store, table);
    const today = broughtAt.slice(0, 10);
    store.write({ actorId: broughtById, now: broughtAt }, (writer) => {
      const attachmentId = writer.insert(attachments, {
        sha256: putFile(bytes).sha256,
        mediaType: 'text/csv',
        byteLength: bytes.length,
        fileName,
        origin: 'original',
        subject: 'table',
        addedById: broughtById,
        addedAt: broughtAt,
      });
      const { plan, issues } = planImport(writer.db, table, mapping, [], today);
      if (isTakenIn === issues.length > 0) throw new Error(`${fileName}: ${JSON.stringify(issues)}`);
      if (!isTakenIn) return;
      const given = { fileName, attachmentId, sheetName: null, mapping, plan, today, importedById: broughtById };
      for (const _entry of keepImport(writer, given));
    });
  }
}
