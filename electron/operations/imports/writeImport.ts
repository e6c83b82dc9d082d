/** Writes a planned import, a piece at a time. The caller's transaction makes it all or nothing. */
import { findPlacement } from '../../../db/placements.ts';
import {
  applianceDates,
  appliances,
  customers,
  jobs,
  parties,
  placements,
  sites,
  visitJobs,
  visits,
} from '../../../db/schema/index.ts';
import type { StoreWriter } from '../../../db/storeWriter.ts';
import type {
  ImportPlan,
  PlannedAppliance,
  PlannedCustomer,
  PlannedService,
  PlannedSite,
} from '../../../domain/imports/groupRows.ts';
import { serialKeyOf } from '../../../domain/text/serialKey.ts';
import { toPartyRow } from '../partyFields.ts';
import { searchTextOf } from '../siteHandlers.ts';

export type ImportPlace = {
  readonly jurisdiction: string;
  readonly timeZone: string;
  readonly country: string;
  readonly today: string;
  readonly fileName: string;
};

/** A visit needs a planned length; of a past one nobody knows it, so it gets the office's usual hour and a half. */
const PAST_SERVICE_MIN = 90;

/** Stops after each entry of the plan; `countEntries` says how many there are. */
export function* writeImport(writer: StoreWriter, plan: ImportPlan, place: ImportPlace): Generator<void> {
  const customerIds: string[] = [];
  for (const one of plan.customers) {
    customerIds.push(one.customerId ?? writeCustomer(writer, one, place));
    yield;
  }
  const siteIds: string[] = [];
  for (const one of plan.sites) {
    siteIds.push(writeSite(writer, one, customerIds, place));
    yield;
  }
  const stands: Stand[] = [];
  for (const one of plan.appliances) {
    stands.push(writeAppliance(writer, one, siteIds));
    yield;
  }
  for (const one of plan.services) {
    writeService(writer, one, wanted(stands, one.ofAppliance), place);
    yield;
  }
}

export function countEntries({ customers, sites, appliances, services }: ImportPlan): number {
  return customers.length + sites.length + appliances.length + services.length;
}

function writeCustomer(writer: StoreWriter, { customer }: PlannedCustomer, place: ImportPlace): string {
  const { number, phone, ...fields } = customer;
  const partyId = writer.insert(parties, toPartyRow({ ...fields, phoneTyped: phone }, place.country));
  const note = number === null ? null : `Customer number ${number}`;
  return writer.insert(customers, { partyId, since: place.today, note });
}

function writeSite(
  writer: StoreWriter,
  { site, ofCustomer }: PlannedSite,
  customerIds: readonly string[],
  place: ImportPlace,
): string {
  return writer.insert(sites, {
    ...site,
    customerId: wanted(customerIds, ofCustomer),
    jurisdiction: place.jurisdiction,
    timeZone: place.timeZone,
    searchText: searchTextOf(site),
  });
}

type Stand = { readonly applianceId: string; readonly siteId: string };

function writeAppliance(writer: StoreWriter, planned: PlannedAppliance, siteIds: readonly string[]): Stand {
  if (planned.applianceId !== null) {
    const placement = findPlacement(writer.db, planned.applianceId);
    if (placement === undefined) throw new Error(`appliance ${planned.applianceId} stands nowhere`);
    return { applianceId: planned.applianceId, siteId: placement.siteId };
  }
  const { dates, position, maker, model, ...fields } = planned.appliance;
  const siteId = wanted(siteIds, planned.ofSite ?? -1);
  const applianceId = writer.insert(appliances, {
    ...fields,
    maker: maker ?? '',
    model: model ?? '',
    serialKey: serialKeyOf(fields.serial),
    ratedInputBasis: 'gross',
  });
  for (const { kind, on, precision } of dates) {
    writer.insert(applianceDates, { applianceId, kind, on, precision, source: 'imported list' });
  }
  const installedOn = dates.find(({ kind, precision }) => kind === 'installed' && precision === 'day')?.on ?? null;
  writer.insert(placements, { applianceId, siteId, position, fromOn: installedOn });
  return { applianceId, siteId };
}

/** A past service is a finished visit without a record of its own: nobody took its readings down here. */
function writeService(
  writer: StoreWriter,
  { row, service }: PlannedService,
  { applianceId, siteId }: Stand,
  place: ImportPlace,
): void {
  const at = `${service.on}T12:00:00.000Z`;
  const by = service.by === null ? null : `By ${service.by}.`;
  const note = [service.note, by, `From ${place.fileName}, row ${row}.`].filter(Boolean).join(' ');
  const jobId = writer.insert(jobs, {
    kind: 'service',
    applianceId,
    openedAt: at,
    closedAt: at,
    isChargeable: false,
    chargeReason: 'before this program',
    outsideInvoiceNumber: service.invoice,
    note,
  });
  const visitId = writer.insert(visits, {
    siteId,
    state: 'finished',
    plannedOn: service.on,
    durationMin: PAST_SERVICE_MIN,
    outcome: 'finished',
    note,
  });
  writer.insert(visitJobs, { visitId, jobId });
}

function wanted<T>(list: readonly T[], index: number): T {
  const found = list[index];
  if (found === undefined) throw new Error(`the import plan has no entry ${index}`);
  return found;
}
