/**
 * An amendment: the record as it was sealed, with one correction written beside it. Nothing below the seal changes, not even
 * a salt: the original stays readable in the newest entry as well as in its own.
 */
import type { Verdict } from '../../domain/judgement/finding.ts';
import type { Disclosure } from './commitment.ts';
import { RECORD_SCHEMA, type SealedRecord, sealedRecord } from './sealedRecord.ts';
import type { SealPosition } from './sealInput.ts';
import { personal, sealValues } from './sealValues.ts';

export type Amendment = {
  /** Of the record; null: something it has no place for. */
  readonly path: string | null;
  readonly what: string;
  readonly was: string | null;
  readonly isNow: string;
  readonly because: string;
  /** What it puts outside its limit or at a stop. */
  readonly judged: readonly { readonly subject: string; readonly verdict: Verdict }[];
  readonly byId: string;
  readonly byName: string;
  readonly at: string;
  /** Whose data the values are; erased with them. */
  readonly partyId: string | null;
};

export function amendRecord(
  before: { readonly record: SealedRecord; readonly disclosures: readonly Disclosure[]; readonly sha256: string },
  amendment: Amendment,
  place: Pick<SealPosition, 'sequence' | 'previousSha256'>,
  newSalt: () => string,
): { readonly record: SealedRecord; readonly disclosures: readonly Disclosure[] } {
  const { partyId, byName, ...facts } = amendment;
  const written = {
    ...facts,
    was: personal(facts.was, partyId),
    isNow: personal(facts.isNow, partyId),
    because: personal(facts.because, partyId),
    byName: personal(byName, null),
  };
  const { sealed, disclosures } = sealValues(
    {
      ...before.record,
      schema: RECORD_SCHEMA,
      seal: {
        ...place,
        kind: 'amendment',
        amends: { sha256: before.sha256, reason: personal(facts.because, partyId) },
        amendments: [...(before.record.seal.amendments ?? []), written],
        sealedAt: facts.at,
        sealedById: facts.byId,
      },
    },
    newSalt,
  );
  return {
    record: sealedRecord.parse(sealed),
    // The reason of the entry before stands in that entry, and among its amendments here.
    disclosures: [...before.disclosures.filter(({ path }) => !path.startsWith('/seal/amends/')), ...disclosures],
  };
}
