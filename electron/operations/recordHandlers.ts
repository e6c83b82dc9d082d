/** Verifying what was sealed. */
import { listSealsOfVisit } from '../../db/seals.ts';
import { findVisit } from '../../db/visits.ts';
import { type Handlers, notFound } from './handler.ts';
import { chainOf } from './sealChains.ts';

export const recordHandlers: Handlers<'records.verify'> = {
  'records.verify': (input, context) => {
    if (findVisit(context.db, input.visitId) === undefined) return notFound('visits', input.visitId);
    const rows = new Map(listSealsOfVisit(context.db, input.visitId).map((row) => [row.id, row]));
    const checked = chainOf(context.store.raw, input.visitId);
    return {
      isIntact: checked.length > 0 && checked.every((entry) => entry.problems.length === 0),
      entries: checked.map((entry) => ({
        sequence: entry.sequence,
        kind: rows.get(entry.sealId)?.kind ?? '',
        sha256: rows.get(entry.sealId)?.sha256 ?? '',
        problem: entry.problems.length === 0 ? null : entry.problems.map((problem) => problem.code).join(', '),
      })),
    };
  },
};
