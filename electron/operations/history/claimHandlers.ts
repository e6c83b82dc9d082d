/** Claims: what was asked of the maker, part by part, and what came of it; and the one file that goes with it. */
import { type ClaimRecord, findClaim, listClaims, listSealedRunIds } from '../../../db/applianceHistory.ts';
import { findAppliance, findApplianceSummary, listApplianceDates } from '../../../db/appliances.ts';
import { findCompany } from '../../../db/people.ts';
import { findRegistration } from '../../../db/registrations.ts';
import { attachmentLinks, claims } from '../../../db/schema/index.ts';
import type { ClaimFields } from '../../contract/history.ts';
import { type ClaimFileClaim, claimFilePdf } from '../../documents/claimFile/claimFilePdf.ts';
import { DATE_WORDS } from '../../documents/packet/packetWords.ts';
import { type Handlers, notFound } from '../handler.ts';
import { keepMade } from '../keepMade.ts';
import { listServiceProofs, readPacketState } from '../packetInput.ts';
import { dayIn } from '../today.ts';
import { toClaimRow } from './claimRow.ts';

export const claimHandlers: Handlers<'claims.list' | 'claims.open' | 'claims.update' | 'claims.buildFile'> = {
  'claims.list': (input, context) =>
    listClaims(context.db, input).map(({ claim, ...appliance }) => ({
      claimId: claim.id,
      applianceId: claim.applianceId,
      ...appliance,
      outcome: claim.outcome as 'open',
      claim: toClaimFields(claim),
    })),

  'claims.open': (input, context) => {
    if (findAppliance(context.db, input.applianceId) === undefined) return notFound('appliances', input.applianceId);
    const row = toClaimRow(input.claim);
    const claimId = context.write((writer) => writer.insert(claims, { applianceId: input.applianceId, ...row }));
    context.services.changed(['appliances', 'claims']);
    return { claimId };
  },

  'claims.update': (input, context) => {
    if (findClaim(context.db, input.claimId) === undefined) return notFound('claims', input.claimId);
    const row = toClaimRow(input.claim);
    context.write((writer) => writer.update(claims, input.claimId, row));
    context.services.changed(['appliances', 'claims']);
    return {};
  },

  'claims.buildFile': async (input, context) => {
    const { db, services, now } = context;
    const appliance = findAppliance(db, input.applianceId);
    const summary = findApplianceSummary(db, input.applianceId);
    const company = findCompany(db);
    if (appliance === undefined || summary === undefined || company === undefined) {
      return notFound('appliances', input.applianceId);
    }
    const claim = input.claimId === null ? null : (findClaim(db, input.claimId) ?? notFound('claims', input.claimId));
    const records = listSealedRunIds(db, appliance.id).map((runId) => {
      const { facts, gaps } = readPacketState(db, runId, now, services.attachments.get);
      return { ...facts, gaps, isDraft: false, gapReason: null, madeAt: now, showsBothUnits: true };
    });
    const registration = findRegistration(db, appliance.id);
    const bytes = await claimFilePdf({
      appliance,
      where: [summary.street, summary.city].filter(Boolean).join(', ') || null,
      firm: company,
      dates: listApplianceDates(db, appliance.id).map(({ kind, on, precision, source }) => ({
        label: DATE_WORDS[kind as keyof typeof DATE_WORDS],
        on,
        precision: precision as 'day',
        source,
      })),
      registration: {
        submittedOn: registration?.submittedOn ?? null,
        confirmedOn: registration?.confirmedOn ?? null,
        number: registration?.number ?? null,
      },
      claim: claim === null ? null : toFileClaim(claim),
      records,
      services: listServiceProofs(db, appliance.id),
      madeAt: now,
      madeOn: dayIn(company.timeZone, now),
    });
    const fileName = `claim-file-${appliance.serial.replaceAll(/[^A-Za-z0-9-]/g, '')}.pdf`;
    const made = { bytes, mediaType: 'application/pdf' as const, fileName, subject: 'claim-file' };
    const attachmentId = keepMade(context, made, (writer, keptId) => {
      writer.insert(attachmentLinks, {
        attachmentId: keptId,
        entity: 'appliances',
        entityId: appliance.id,
        itemKey: 'claim-file',
      });
    });
    return { attachmentId, fileName, recordCount: records.length, madeAt: now };
  },
};

function toClaimFields(row: ClaimRecord): ClaimFields {
  const { id: _id, applianceId: _applianceId, outcome, partsOutcome, labourOutcome, ...fields } = row;
  return {
    ...fields,
    isWithdrawn: outcome === 'withdrawn',
    partsOutcome: partsOutcome as ClaimFields['partsOutcome'],
    labourOutcome: labourOutcome as ClaimFields['labourOutcome'],
  };
}

function toFileClaim(row: ClaimRecord): ClaimFileClaim {
  const { partNumber, partName, openedOn, sentOn, partReturnedOn, claimNumber, note, currency } = row;
  return {
    partNumber,
    partName,
    openedOn,
    sentOn,
    partReturnedOn,
    claimNumber,
    note,
    parts: askedText(row.partsMinorUnits, row.partsOutcome, row.partsGrantedMinorUnits, currency),
    labour: askedText(row.labourMinorUnits, row.labourOutcome, row.labourGrantedMinorUnits, currency),
  };
}

function askedText(
  asked: number | null,
  outcome: string | null,
  granted: number | null,
  currency: string | null,
): string {
  if (asked === null && outcome === null) return 'not asked for';
  const amount = asked === null ? 'asked for' : `${moneyText(asked, currency)} asked for`;
  const decided = outcome === null ? 'not decided' : outcome.replaceAll('-', ' ');
  return `${amount}; ${decided}${granted === null ? '' : `, ${moneyText(granted, currency)}`}`;
}

function moneyText(minorUnits: number, currency: string | null): string {
  const code = currency ?? 'XXX';
  const format = new Intl.NumberFormat('en', { style: 'currency', currency: code, currencyDisplay: 'code' });
  const digits = format.resolvedOptions().maximumFractionDigits ?? 2;
  return format.format(minorUnits / 10 ** digits);
}
