/** Sites with their heating system, gas supply and the roles of people there. */
import { findAppliance, listAppliancesOfSite } from '../../db/appliances.ts';
import { findCustomer, listSiteRoles } from '../../db/customers.ts';
import { withOpenNotices } from '../../db/openNotices.ts';
import type { ReadableDb } from '../../db/openStore.ts';
import { listPermits, listWithdrawnPermits, type PermitRow } from '../../db/registrations.ts';
import { gasLoads, gasSupplies, gasSupplySites, siteEmitters, sites } from '../../db/schema/index.ts';
import {
  findGasSupply,
  findSite,
  type GasSupplyRow,
  listEmitters,
  listGasLoads,
  listNeighbourAltitudesM,
  type SiteRow,
} from '../../db/sites.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { foldForSearch } from '../../domain/text/foldForSearch.ts';
import { isTimeZone } from '../../domain/text/isTimeZone.ts';
import type { PartyRole } from '../../domain/vocabulary/people.ts';
import type { GasSupplyFields, Permit, SiteFields } from '../contract/sites.ts';
import { fail, type Handlers, notFound } from './handler.ts';
import { partyFieldsOf } from './partyFields.ts';

export const siteHandlers: Handlers<'sites.create' | 'sites.update' | 'sites.get' | 'sites.setGasSupply'> = {
  'sites.create': (input, context) => {
    const customer = findCustomer(context.db, input.customerId);
    if (customer === undefined) return notFound('customers', input.customerId);
    const { emitters, ...fields } = input.site;
    requireTimeZone(fields.timeZone);
    const siteId = context.write((writer) => {
      const id = writer.insert(sites, { customerId: input.customerId, ...fields, searchText: searchTextOf(fields) });
      for (const one of emitters) writer.insert(siteEmitters, { siteId: id, ...one });
      return id;
    });
    context.services.changed(['customers', 'sites']);
    return { siteId };
  },

  'sites.update': (input, context) => {
    requireSite(context.db, input.siteId);
    const { emitters, ...fields } = input.site;
    requireTimeZone(fields.timeZone);
    context.write((writer) => {
      writer.update(sites, input.siteId, { ...fields, searchText: searchTextOf(fields) });
      replaceEmitters(writer, input.siteId, emitters);
    });
    context.services.changed(['customers', 'sites', 'runs']);
    return {};
  },

  'sites.get': (input, context) => {
    const row = requireSite(context.db, input.siteId);
    const supply = findGasSupply(context.db, row.id);
    return {
      siteId: row.id,
      customerId: row.customerId,
      customerName: findCustomer(context.db, row.customerId)?.party.name ?? '',
      site: toSiteFields(row, listEmitters(context.db, row.id)),
      gasSupply: supply === undefined ? null : toGasSupplyFields(supply, listGasLoads(context.db, supply.id)),
      roles: listSiteRoles(context.db, row.id).map(({ roleId, role, fromOn, toOn, party }) => ({
        roleId,
        partyId: party.id,
        name: party.name,
        role: role as PartyRole,
        fromOn,
        toOn,
        party: partyFieldsOf(party),
        isErased: party.erasedAt !== null,
      })),
      permits: listPermits(context.db, row.id).map(toPermit),
      withdrawnPermits: listWithdrawnPermits(context.db, row.id).map(toPermit),
      appliances: withOpenNotices(context.db, listAppliancesOfSite(context.db, row.id)),
      neighbourAltitudesM: [...listNeighbourAltitudesM(context.db, row)],
    };
  },

  'sites.setGasSupply': (input, context) => {
    requireSite(context.db, input.siteId);
    const { loads, ...fields } = input.gasSupply;
    for (const { applianceId } of loads)
      if (applianceId !== null && findAppliance(context.db, applianceId) === undefined)
        return notFound('appliances', applianceId);
    context.write((writer) => {
      const existing = findGasSupply(writer.db, input.siteId);
      const supplyId = existing?.id ?? writer.insert(gasSupplies, fields);
      if (existing === undefined) writer.insert(gasSupplySites, { gasSupplyId: supplyId, siteId: input.siteId });
      else writer.update(gasSupplies, supplyId, fields);
      replaceLoads(writer, supplyId, loads);
    });
    context.services.changed(['sites', 'runs']);
    return {};
  },
};

function requireSite(db: ReadableDb, siteId: string): SiteRow {
  return findSite(db, siteId) ?? notFound('sites', siteId);
}

function toPermit({ id, number, issuer, state, on, endReason }: PermitRow): Permit {
  return { permitId: id, number, issuer, state: state as Permit['state'], on, endReason };
}

function requireTimeZone(timeZone: string): void {
  if (!isTimeZone(timeZone)) fail('unknown-time-zone', { timeZone });
}

export function searchTextOf(site: Pick<SiteFields, 'label' | 'street' | 'postcode' | 'city'>): string {
  return foldForSearch([site.label, site.street, site.postcode, site.city].filter(Boolean).join(' '));
}

/** Emitters have no identity on screen: what is no longer named is marked removed, what is new is added. */
function replaceEmitters(writer: StoreWriter, siteId: string, wanted: SiteFields['emitters']): void {
  const left = [...wanted];
  for (const row of listEmitters(writer.db, siteId)) {
    const index = left.findIndex(
      (one) => one.emitter === row.emitter && one.zone === row.zone && one.ratedKw === row.ratedKw,
    );
    if (index >= 0) left.splice(index, 1);
    else writer.update(siteEmitters, row.id, { removedAt: writer.now });
  }
  for (const one of left) writer.insert(siteEmitters, { siteId, ...one });
}

function replaceLoads(writer: StoreWriter, gasSupplyId: string, wanted: GasSupplyFields['loads']): void {
  const left = [...wanted];
  for (const row of listGasLoads(writer.db, gasSupplyId)) {
    const index = left.findIndex(
      (one) => one.name === row.name && one.inputKw === row.inputKw && one.applianceId === row.applianceId,
    );
    if (index >= 0) left.splice(index, 1);
    else writer.remove(gasLoads, row.id);
  }
  for (const one of left) writer.insert(gasLoads, { gasSupplyId, ...one });
}

export function toSiteFields(row: SiteRow, emitters: ReturnType<typeof listEmitters>): SiteFields {
  const {
    id: _id,
    customerId: _customerId,
    searchText: _searchText,
    buildingKind,
    systemVolumeHow,
    glycolKind,
    ...rest
  } = row;
  return {
    ...rest,
    buildingKind: buildingKind as SiteFields['buildingKind'],
    systemVolumeHow: systemVolumeHow as SiteFields['systemVolumeHow'],
    glycolKind: glycolKind as SiteFields['glycolKind'],
    emitters: emitters.map(({ emitter, zone, ratedKw }) => ({ emitter: emitter as never, zone, ratedKw })),
  };
}

export function toGasSupplyFields(row: GasSupplyRow, loads: ReturnType<typeof listGasLoads>): GasSupplyFields {
  const { id: _id, kind, fuel, compensation, ...rest } = row;
  return {
    ...rest,
    kind: kind as GasSupplyFields['kind'],
    fuel: fuel as GasSupplyFields['fuel'],
    compensation: compensation as GasSupplyFields['compensation'],
    loads: loads.map(({ name, inputKw, applianceId }) => ({ name, inputKw, applianceId })),
  };
}
