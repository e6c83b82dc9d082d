/** Gathers, for sealing or a draft, everything a run's record holds. */
import { findAppliance, findFuelStateOn, listApplianceDates } from '../../db/appliances.ts';
import { findCustomer, listConsents, listSiteRoles } from '../../db/customers.ts';
import type { ReadableDb } from '../../db/openStore.ts';
import { findCompany, listLicencesOf, listStaff, listTrainings } from '../../db/people.ts';
import { findLastPlacement } from '../../db/placements.ts';
import { listPermits } from '../../db/registrations.ts';
import { findGasSupply, findSite, listEmitters, listGasLoads } from '../../db/sites.ts';
import { listCrews, type VisitRecord } from '../../db/visits.ts';
import type { PartyFields } from '../contract/parties.ts';
import type { PartyAtVisit, RecordInput } from '../sealing/sealInput.ts';
import { toProfile } from './appHandlers.ts';
import { toApplianceFields } from './applianceHandlers.ts';
import { computedValues } from './computedValues.ts';
import { toParty } from './customerHandlers.ts';
import { notFound } from './handler.ts';
import type { RunState } from './runState.ts';
import { toGasSupplyFields, toSiteFields } from './siteHandlers.ts';
import { dayIn } from './today.ts';

export function readRecordInput(db: ReadableDb, state: RunState, visit: VisitRecord, now: string): RecordInput {
  const company = toProfile(findCompany(db) ?? notFound('companies', 'this'));
  const appliance = findAppliance(db, state.job.applianceId) ?? notFound('appliances', state.job.applianceId);
  const site = findSite(db, visit.siteId) ?? notFound('sites', visit.siteId);
  const supply = findGasSupply(db, site.id);
  const on = dayIn(site.timeZone, visit.startedAt ?? now);
  const fuelState = findFuelStateOn(db, appliance.id, on);
  const customer = findCustomer(db, site.customerId) ?? notFound('customers', site.customerId);
  return {
    language: company.language,
    unitSystem: company.unitSystem,
    company,
    job: { jobId: state.job.id, kind: state.record.kind },
    visit: {
      visitId: visit.id,
      on,
      startedAt: visit.startedAt,
      finishedAt: visit.endedAt,
      outcome: visit.outcome as RecordInput['visit']['outcome'],
      labourMin: visit.labourMin,
    },
    crew: crewOf(db, visit, state),
    parties: partiesOf(db, site.id, customer.party.id, customer.party),
    subjectPartyId: customer.party.id,
    site: { siteId: site.id, ...toSiteFields(site, listEmitters(db, site.id)) },
    gasSupply: supply === undefined ? null : toGasSupplyFields(supply, listGasLoads(db, supply.id)),
    appliance: {
      applianceId: appliance.id,
      ...toApplianceFields(appliance),
      position: findLastPlacement(db, appliance.id)?.position ?? null,
      dates: listApplianceDates(db, appliance.id).map(({ kind, on, precision, source }) => ({
        kind: kind as RecordInput['appliance']['dates'][number]['kind'],
        on,
        precision: precision as 'day' | 'month' | 'year',
        source,
      })),
      fuelState:
        fuelState === undefined
          ? null
          : {
              fuel: fuelState.fuel as NonNullable<RecordInput['appliance']['fuelState']>['fuel'],
              fromOn: fuelState.fromOn,
              conversionKit: fuelState.conversionKit,
              orifice: fuelState.orifice,
              proof: fuelState.proof,
            },
    },
    permits: listPermits(db, site.id).map(({ number, issuer, state: permitState, on }) => ({
      number,
      issuer,
      state: permitState as RecordInput['permits'][number]['state'],
      on,
    })),
    sheet: state.sheet,
    steps: state.steps,
    run: state.record,
    findings: state.findings,
    computed: computedValues(state.findings),
  };
}

/** The booked crew and everybody who measured, typed, answered or signed. */
function crewOf(db: ReadableDb, visit: VisitRecord, state: RunState): RecordInput['crew'] {
  const roles = new Map(
    listCrews(db, [visit.id]).map(({ crew }) => [crew.staffId, crew.role as RecordInput['crew'][number]['role']]),
  );
  const { answers, readings, signOffs, holds, tunings, firingPoints } = state.record;
  const involved = new Set([
    ...roles.keys(),
    ...answers.map((answer) => answer.byId),
    ...readings.flatMap((reading) => [reading.measuredById, reading.typedById]),
    ...signOffs.flatMap((signOff) => (signOff.staffId === null ? [] : [signOff.staffId])),
    ...[...answers, ...holds, ...tunings, ...firingPoints, ...signOffs].flatMap(({ transcribed }) =>
      transcribed == null ? [] : [transcribed.typedById],
    ),
  ]);
  const trainings = listTrainings(db);
  return listStaff(db)
    .filter((row) => involved.has(row.id))
    .map((row) => ({
      staffId: row.id,
      name: row.name,
      role:
        roles.get(row.id) ??
        (state.people.some((person) => person.staffId === row.id && person.isLicensed) ? 'licensed' : 'helper'),
      licences: listLicencesOf(db, row.id).map(
        ({ number, issuer, place, licenceClass, fuel, maxKw, validFrom, validTo }) => ({
          number,
          issuer,
          place,
          licenceClass,
          fuel: fuel as RecordInput['crew'][number]['licences'][number]['fuel'],
          maxKw,
          validFrom,
          validTo,
        }),
      ),
      trainings: trainings
        .filter((training) => training.staffId === row.id)
        .map(({ maker, modelLine, number, validFrom, validTo }) => ({ maker, modelLine, number, validFrom, validTo })),
    }));
}

/** The customer, as owner unless somebody else is, and everybody with a role at the site. */
function partiesOf(
  db: ReadableDb,
  siteId: string,
  customerPartyId: string,
  customerParty: Parameters<typeof toParty>[0],
): readonly PartyAtVisit[] {
  const byParty = new Map<string, { fields: Parameters<typeof toParty>[0]; roles: PartyAtVisit['roles'][number][] }>();
  for (const row of listSiteRoles(db, siteId)) {
    if (row.toOn !== null) continue;
    const entry = byParty.get(row.partyId) ?? { fields: row.party, roles: [] };
    entry.roles.push(row.role as PartyAtVisit['roles'][number]);
    byParty.set(row.partyId, entry);
  }
  const hasOwner = [...byParty.values()].some((entry) => entry.roles.includes('owner'));
  const own = byParty.get(customerPartyId) ?? { fields: customerParty, roles: [] };
  if (!hasOwner) own.roles.push('owner');
  byParty.set(customerPartyId, own);
  return [...byParty].map(([partyId, { fields, roles }]) => {
    const { partyId: _partyId, phoneE164: _phoneE164, ...party } = toParty(fields);
    return {
      partyId,
      party: party satisfies PartyFields,
      roles,
      consents: listConsents(db, partyId).map(({ purpose, channel, granted, on }) => ({
        purpose: purpose as PartyAtVisit['consents'][number]['purpose'],
        channel: channel as PartyAtVisit['consents'][number]['channel'],
        granted,
        on,
      })),
    };
  });
}
