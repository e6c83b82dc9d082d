/** Sealed records: verified against their chain and the change log, and amended without touching what was sealed. */
import { randomBytes } from 'node:crypto';
import { findFirstLogged } from '../../db/history.ts';
import type { ReadableDb } from '../../db/openStore.ts';
import { makeSafes } from '../../db/schema/index.ts';
import { findLastSeal, listDisclosures, listSealsOfVisit, type SealRow } from '../../db/seals.ts';
import { findVisit } from '../../db/visits.ts';
import { amendRecord } from '../sealing/amendRecord.ts';
import { type ChainProblem, readSealedRecord } from '../sealing/chainProblems.ts';
import type { Disclosure } from '../sealing/commitment.ts';
import { recordDifferences } from '../sealing/recordDifferences.ts';
import { revealRecord } from '../sealing/revealRecord.ts';
import type { SealedRecord } from '../sealing/sealedRecord.ts';
import { addSeal } from './addSeal.ts';
import { amendableFields } from './amendableFields.ts';
import { findBrokenDays } from './closeDays.ts';
import { actorOf, fail, type Handlers, notFound } from './handler.ts';
import { judgeAmended } from './judgeAmended.ts';
import { requireLicensedFor } from './runGuards.ts';
import { loadRun } from './runState.ts';
import { chainOf } from './sealChains.ts';

export const recordHandlers: Handlers<'records.verify' | 'records.getAmendments' | 'records.amend'> = {
  'records.verify': (input, context) => {
    if (findVisit(context.db, input.visitId) === undefined) return notFound('visits', input.visitId);
    const rows = new Map(listSealsOfVisit(context.db, input.visitId).map((row) => [row.id, row]));
    const checked = chainOf(context.store.raw, input.visitId);
    return {
      brokenDays: [...findBrokenDays(context.store.raw)],
      isIntact: checked.length > 0 && checked.every((entry) => entry.problems.length === 0),
      entries: checked.map((entry) => {
        const row = rows.get(entry.sealId);
        return {
          sequence: entry.sequence,
          kind: row?.kind ?? '',
          sha256: row?.sha256 ?? '',
          problems: entry.problems.map((problem) => ({ code: problem.code, detail: detailOf(problem) })),
          alterations: row === undefined || entry.problems.length === 0 ? [] : [...alterationsOf(context.db, row)],
        };
      }),
    };
  },

  'records.getAmendments': (input, context) => {
    const { record, disclosures } = requireSealed(context.db, input.runId);
    const open = revealRecord(record, disclosures);
    return {
      amendments: (open.seal.amendments ?? []).map(({ byId: _byId, judged, ...amendment }) => ({
        ...amendment,
        judged: [...(judged ?? [])],
      })),
      fields: [...amendableFields(open)],
    };
  },

  'records.amend': (input, context) => {
    const actor = actorOf(context);
    const before = requireSealed(context.db, input.runId);
    const { seal, record, disclosures } = before;
    const field = input.path === null ? null : fieldAt(before, input.path);
    const what = field?.what ?? input.what ?? fail('no-such-field', {});
    if (input.path?.startsWith('/run/'))
      requireLicensedFor(context.db, loadRun(context.db, input.runId), seal.visitId, actor.staffId);
    const open = revealRecord(record, disclosures);
    const { isNow, judged } = judgeAmended(context.db, open, input, context.now);
    if (field?.says === isNow) return fail('nothing-amended', {});
    const chain = listSealsOfVisit(context.db, seal.visitId);
    const place = { sequence: chain.length + 1, previousSha256: chain.at(-1)?.sha256 ?? null };
    const amended = amendRecord(
      { record, disclosures, sha256: seal.sha256 },
      {
        path: input.path,
        what,
        was: field?.says ?? null,
        isNow,
        because: input.because,
        judged,
        byId: actor.staffId,
        byName: actor.name,
        at: context.now,
        partyId: partyOf(disclosures, input.path),
      },
      place,
      () => randomBytes(16).toString('hex'),
    );
    const { sha256, makeSafeId } = context.write((writer) => {
      const by = { sealedById: actor.staffId, sealedAt: context.now };
      const sealed = { visitId: seal.visitId, runId: seal.runId, kind: 'amendment', ...place, ...by };
      const sha256 = addSeal(writer, context.store.raw, sealed, amended);
      if (!judged.some(({ verdict }) => verdict === 'stop')) return { sha256, makeSafeId: null };
      // Nobody has to remember to: what stands at a stop is shut until a licensed person has looked.
      const was = field?.says ?? 'not recorded';
      const makeSafeId = writer.insert(makeSafes, {
        applianceId: open.appliance.applianceId,
        siteId: open.site.siteId,
        visitId: seal.visitId,
        what: `${what}: ${isNow} (amended after sealing, was ${was})`.slice(0, 300),
        isRefused: false,
        openedById: actor.staffId,
        openedAt: writer.now,
      });
      return { sha256, makeSafeId };
    });
    context.services.changed(['visits', 'runs', 'registrations', 'appliances', 'sites', 'customers']);
    return { sha256, sequence: place.sequence, judged: [...judged], makeSafeId };
  },
};

type Sealed = { readonly seal: SealRow; readonly record: SealedRecord; readonly disclosures: readonly Disclosure[] };

function requireSealed(db: ReadableDb, runId: string): Sealed {
  loadRun(db, runId);
  const seal = findLastSeal(db, runId) ?? fail('not-sealed', {});
  const read = readSealedRecord(seal.canonical);
  if (!read.ok) throw new Error(`seal ${seal.id} does not read: ${read.problem.code}`);
  const disclosures = listDisclosures(db, seal.id).map(({ path, salt, value, partyId }) => ({
    path,
    salt,
    value,
    partyId,
  }));
  return { seal, record: read.record, disclosures };
}

function fieldAt({ record, disclosures }: Sealed, path: string) {
  const field = amendableFields(revealRecord(record, disclosures)).find((one) => one.path === path);
  return field ?? fail('no-such-field', {});
}

/** Whose the field is; free words about the work are erased with the customer, as they are in the record. */
function partyOf(disclosures: readonly Disclosure[], path: string | null): string | null {
  const own = disclosures.find((one) => one.path === path);
  const street = disclosures.find((one) => one.path === '/site/street');
  return own?.partyId ?? street?.partyId ?? null;
}

/** The log keeps what was written when it was sealed; whoever changed the record alone is found out by it. */
function alterationsOf(db: ReadableDb, row: SealRow) {
  const logged = findFirstLogged(db, 'seals', row.id)?.['canonical']?.value;
  return typeof logged === 'string' ? recordDifferences(logged, row.canonical) : [];
}

function detailOf(problem: ChainProblem): string | null {
  switch (problem.code) {
    case 'not-a-record':
      return problem.detail;
    case 'row-differs':
      return problem.field;
    case 'wrong-sequence':
      return String(problem.expected);
    case 'wrong-previous':
      return problem.expected;
    case 'disclosure-differs':
    case 'disclosure-without-commitment':
      return problem.path;
    default:
      return null;
  }
}
