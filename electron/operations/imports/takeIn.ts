/** Takes a planned list in, a piece at a time. */
import type { StoreWriter } from '../../../db/storeWriter.ts';
import { countsOf, type ImportToKeep, keepImport } from './keepImport.ts';
import type { ListResult, ListStep } from './listWorks.ts';
import { countEntries } from './writeImport.ts';

export function* takeIn(writer: StoreWriter, given: ImportToKeep): Generator<ListStep, ListResult> {
  const of = countEntries(given.plan);
  let done = 0;
  const keeping = keepImport(writer, given);
  let kept = keeping.next();
  for (; kept.done !== true; kept = keeping.next()) {
    done += 1;
    yield { doing: 'rows', done, of };
  }
  return { importId: kept.value, counts: countsOf(given.plan) };
}
