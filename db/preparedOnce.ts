/** A query built and prepared once per opened store: on the way of every saved field, building it anew costs more than running it. */
import type { ReadableDb } from './openStore.ts';

export function preparedOnce<P>(build: (db: ReadableDb) => P): (db: ReadableDb) => P {
  const perStore = new WeakMap<ReadableDb, P>();
  return (db) => {
    const known = perStore.get(db);
    if (known !== undefined) return known;
    const made = build(db);
    perStore.set(db, made);
    return made;
  };
}
