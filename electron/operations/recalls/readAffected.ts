/** The appliances a notice is about, and those of which it can't be told, as things are on file now. */
import type { Database } from 'better-sqlite3';
import { listMakers, listRecallCandidates, type RecallCandidate, type RecallRecord } from '../../../db/recalls.ts';
import { plainName, type RecallDoubt, recallMatch } from '../../../domain/recalls/recallMatch.ts';

export type AffectedAppliance = RecallCandidate & { readonly doubts: readonly RecallDoubt[] };

export function readAffected(raw: Database, recall: RecallRecord): readonly AffectedAppliance[] {
  const makers = listMakers(raw).filter((maker) => plainName(maker) === plainName(recall.maker));
  return listRecallCandidates(raw, makers).flatMap((candidate) => {
    const match = recallMatch(recall, candidate);
    return match === null ? [] : [{ ...candidate, doubts: match.doubts }];
  });
}
