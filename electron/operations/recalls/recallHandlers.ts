/** Notices: taken down, matched against every appliance on file, told of and settled one by one. */
import { findAppliance } from '../../../db/appliances.ts';
import { findParties } from '../../../db/dues/parties.ts';
import { findCompany, findStaff } from '../../../db/people.ts';
import {
  findRecall,
  listRecallOutcomes,
  listRecalls,
  listRecallTold,
  type RecallOutcomeRecord,
  type RecallRecord,
} from '../../../db/recalls.ts';
import { messageEvents, messages, recallOutcomes, recalls } from '../../../db/schema/index.ts';
import { checkSerialRange } from '../../../domain/recalls/serialRange.ts';
import { assertNever } from '../../../domain/result.ts';
import type { ParsedInputOf } from '../../contract/index.ts';
import type { AffectedRow, RecallFields, RecallRow } from '../../contract/recalls.ts';
import { companyToday } from '../companyToday.ts';
import { actorOf, fail, type HandlerContext, type Handlers, notFound } from '../handler.ts';
import { gasWorkOn, requireLicence } from '../licensing.ts';
import { type AffectedAppliance, readAffected } from './readAffected.ts';

export const recallHandlers: Handlers<
  'recalls.list' | 'recalls.save' | 'recalls.get' | 'recalls.settle' | 'recalls.noteTold' | 'recalls.close'
> = {
  'recalls.list': (_input, context) =>
    listRecalls(context.db).map((recall) => toRow(recall, standing(context, recall))),

  'recalls.save': ({ recallId, recall }, context) => {
    refuseUnclear(recall);
    if (recallId !== null) requireRecall(context, recallId);
    const saved = context.write((writer) => {
      if (recallId === null) {
        const addedById = actorOf(context).staffId;
        return writer.insert(recalls, { ...recall, addedById, addedAt: context.now });
      }
      writer.update(recalls, recallId, recall);
      return recallId;
    });
    context.services.changed(['recalls', 'runs', 'appliances', 'visits', 'jobs']);
    return { recallId: saved };
  },

  'recalls.get': (input, context) => {
    const recall = requireRecall(context, input.recallId);
    const all = standing(context, recall);
    const wanted = all.filter((one) => isShown(one, input.show));
    const page = wanted.slice(input.after, input.after + input.limit);
    const parties = findParties(
      context.db,
      page.flatMap(({ row }) => row.partyId ?? []),
    );
    const end = input.after + page.length;
    return {
      recall: toRow(recall, all),
      rows: page.map((one) => toAffected(one, parties.get(one.row.partyId ?? '')?.phoneTyped ?? null)),
      next: end < wanted.length ? end : null,
    };
  },

  'recalls.settle': (input, context) => {
    const recall = requireRecall(context, input.recallId);
    requireAppliance(context, input.applianceId);
    refuseFuture(context, input.on);
    const byId = input.byId ?? actorOf(context).staffId;
    if (findStaff(context.db, byId) === undefined) return notFound('staff', byId);
    if (input.outcome !== 'refused') {
      if ((input.note ?? '') === '') return fail('reason-missing', {});
      // One that only informs opens no way to firing.
      if (!recall.mayFire) requireLicence(context.db, byId, gasWorkOn(context.db, input.applianceId, input.on));
    }
    const before = listRecallOutcomes(context.db, input.recallId).get(input.applianceId);
    context.write((writer) => {
      if (before === undefined) writer.insert(recallOutcomes, { ...input, byId });
      else writer.update(recallOutcomes, before.id, { outcome: input.outcome, on: input.on, note: input.note, byId });
    });
    context.services.changed(['recalls', 'runs', 'appliances', 'visits', 'jobs']);
    return {};
  },

  'recalls.noteTold': (input, context) => {
    const recall = requireRecall(context, input.recallId);
    requireAppliance(context, input.applianceId);
    refuseFuture(context, input.on);
    const company = findCompany(context.db) ?? notFound('companies', 'this');
    const partyId = readAffected(context.store.raw, recall).find(
      ({ applianceId }) => applianceId === input.applianceId,
    )?.partyId;
    if (partyId == null) return fail('no-owner-on-file', {});
    const preparedById = actorOf(context).staffId;
    context.write((writer) => {
      const messageId = writer.insert(messages, {
        kind: 'recall',
        channel: input.channel,
        language: company.language,
        partyId,
        applianceId: input.applianceId,
        recallId: recall.id,
        aboutOn: recall.issuedOn,
        subject: recall.title,
        body: input.note ?? '',
        preparedById,
        preparedAt: context.now,
      });
      writer.insert(messageEvents, {
        messageId,
        kind: 'sent',
        on: input.on,
        note: input.note,
        byId: preparedById,
        at: context.now,
      });
    });
    context.services.changed(['recalls', 'messages']);
    return {};
  },

  'recalls.close': (input, context) => {
    requireRecall(context, input.recallId);
    context.write((writer) => writer.update(recalls, input.recallId, { closedOn: input.closedOn }));
    context.services.changed(['recalls']);
    return {};
  },
};

type Standing = {
  readonly row: AffectedAppliance;
  readonly outcome: RecallOutcomeRecord | null;
  readonly told: AffectedRow['told'];
};

function standing(context: HandlerContext, recall: RecallRecord): readonly Standing[] {
  const outcomes = listRecallOutcomes(context.db, recall.id);
  const told = listRecallTold(context.store.raw, recall.id);
  return readAffected(context.store.raw, recall).map((row) => ({
    row,
    outcome: outcomes.get(row.applianceId) ?? null,
    told: told.get(row.applianceId) ?? null,
  }));
}

function isShown({ row, outcome }: Standing, show: ParsedInputOf<'recalls.get'>['show']): boolean {
  switch (show) {
    case 'open':
      return outcome === null;
    case 'doubtful':
      return outcome === null && row.doubts.length > 0;
    case 'settled':
      return outcome !== null;
    case 'all':
      return true;
    default:
      return assertNever(show);
  }
}

function toRow(recall: RecallRecord, all: readonly Standing[]): RecallRow {
  const { id: recallId, addedById: _addedById, addedAt: _addedAt, models, serialRanges, ...rest } = recall;
  return {
    ...rest,
    recallId,
    models: [...models],
    serialRanges: serialRanges.map((range) => ({ ...range })),
    counts: {
      affected: all.filter(({ row }) => row.doubts.length === 0).length,
      doubtful: all.filter(({ row }) => row.doubts.length > 0).length,
      open: all.filter(({ outcome }) => outcome === null).length,
      told: all.filter(({ told }) => told !== null).length,
    },
  };
}

function toAffected({ row, outcome, told }: Standing, phone: string | null): AffectedRow {
  const { partyId: _partyId, postcode: _postcode, region: _region, country: _country, doubts, ...shown } = row;
  return {
    ...shown,
    phone,
    doubts: [...doubts],
    told,
    outcome: outcome === null ? null : { outcome: outcome.outcome as 'done', on: outcome.on, note: outcome.note },
  };
}

function refuseUnclear(recall: RecallFields): void {
  for (const { from, to } of recall.serialRanges) {
    const checked = checkSerialRange({ from, to });
    if (!checked.ok) fail('serial-range-unclear', { from, to, why: checked.error.code });
  }
  const { altitudeMinM, altitudeMaxM } = recall;
  if (altitudeMinM !== null && altitudeMaxM !== null && altitudeMinM > altitudeMaxM) fail('altitudes-reversed', {});
}

function refuseFuture(context: HandlerContext, on: string): void {
  if (on > companyToday(context)) fail('day-in-future', {});
}

function requireRecall(context: HandlerContext, recallId: string): RecallRecord {
  return findRecall(context.db, recallId) ?? notFound('recalls', recallId);
}

function requireAppliance(context: HandlerContext, applianceId: string): void {
  if (findAppliance(context.db, applianceId) === undefined) notFound('appliances', applianceId);
}
