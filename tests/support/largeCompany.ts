/** A generated firm in a store of its own: so many technicians and visits in one week, written in one go. */
import { join } from 'node:path';
import { Temporal } from 'temporal-polyfill';
import { openStore, storePath } from '../../db/openStore.ts';
import {
  appliances,
  companies,
  customers,
  jobs,
  licences,
  parties,
  placements,
  sites,
  staff,
  staffRoles,
  visitCrew,
  visitJobs,
  visits,
  workingHours,
} from '../../db/schema/index.ts';
import { hashPin } from '../../electron/operations/pins.ts';
import { COMPANY, PIN } from './officeScenario.ts';
import { APP_ROOT } from './testCore.ts';

export type LargeCompany = {
  readonly technicians: number;
  readonly visits: number;
  readonly waitingJobs: number;
  /** A Monday. */
  readonly weekOf: string;
  readonly now: string;
};

/** The person who signs in: owner and dispatcher. */
export const DISPATCHER = 'Maren Oduya';

export function writeLargeCompany(dataFolder: string, wanted: LargeCompany): void {
  const store = openStore({
    path: storePath(dataFolder),
    purpose: 'real',
    migrationsFolder: join(APP_ROOT, 'db/migrations'),
    now: wanted.now,
  });
  store.write({ actorId: null, now: wanted.now }, (writer) => {
    writer.insert(companies, { ...COMPANY, latitude: 44.61, longitude: -64.02 });
    const ownerId = writer.insert(staff, {
      name: DISPATCHER,
      initials: 'MO',
      pinHash: hashPin(PIN),
      activeFrom: '2020-01-01',
    });
    for (const role of ['owner', 'dispatcher']) writer.insert(staffRoles, { staffId: ownerId, role });
    const people = Array.from({ length: wanted.technicians }, (_, index) => {
      const staffId = writer.insert(staff, {
        name: `Technician ${String(index + 1).padStart(2, '0')}`,
        initials: `T${index + 1}`,
        activeFrom: '2020-01-01',
        baseLatitude: 44.6 + (index % 10) / 100,
        baseLongitude: -64 + Math.floor(index / 10) / 50,
      });
      writer.insert(staffRoles, { staffId, role: 'technician' });
      writer.insert(licences, {
        staffId,
        number: `G2-${index}`,
        issuer: 'Provincial gas board',
        place: 'Nova Scotia',
        licenceClass: 'G2',
        validFrom: '2020-01-01',
        validTo: '2035-01-01',
      });
      for (let weekday = 1; weekday <= 5; weekday += 1)
        writer.insert(workingHours, {
          staffId,
          weekday,
          fromMin: 480,
          toMin: 1020,
          breakFromMin: 720,
          breakToMin: 750,
        });
      return staffId;
    });
    const monday = Temporal.PlainDate.from(wanted.weekOf);
    for (let index = 0; index < wanted.visits + wanted.waitingJobs; index += 1) {
      const { siteId, jobId } = writeJob(writer, index, wanted.now);
      if (index >= wanted.visits) continue;
      // Round by round: everybody's first visit of Monday, of Tuesday …, then everybody's second ones.
      const person = people[index % people.length];
      const round = Math.floor(index / people.length);
      if (person === undefined) throw new Error('no technician to send');
      const visitId = writer.insert(visits, {
        siteId,
        state: 'planned',
        plannedOn: monday.add({ days: round % 5 }).toString(),
        startMin: 480 + Math.floor(round / 5) * 75,
        durationMin: 60,
      });
      writer.insert(visitJobs, { visitId, jobId });
      writer.insert(visitCrew, { visitId, staffId: person, role: 'licensed' });
    }
  });
  store.close();
}

function writeJob(
  writer: Parameters<Parameters<ReturnType<typeof openStore>['write']>[1]>[0],
  index: number,
  now: string,
): { readonly siteId: string; readonly jobId: string } {
  const name = `Customer ${index + 1}`;
  const partyId = writer.insert(parties, { kind: 'person', name, searchText: name.toLowerCase() });
  const customerId = writer.insert(customers, { partyId, since: '2024-01-01' });
  const siteId = writer.insert(sites, {
    customerId,
    street: `${index + 1} Ropewalk`,
    city: 'Graven Bay',
    country: 'CA',
    latitude: 44.6 + (index % 37) / 200,
    longitude: -64 + (index % 53) / 200,
    jurisdiction: 'north-america',
    timeZone: 'America/Halifax',
    buildingKind: 'home',
    searchText: '',
  });
  const serial = `LC${100_000 + index}`;
  const applianceId = writer.insert(appliances, {
    serial,
    serialKey: serial,
    maker: 'Invented maker',
    model: 'T 24',
    plateFuel: 'natural-gas',
    ratedInputKw: 25,
    ratedInputBasis: 'gross',
  });
  writer.insert(placements, { applianceId, siteId });
  const jobId = writer.insert(jobs, { kind: 'service', applianceId, openedAt: now, isChargeable: true });
  return { siteId, jobId };
}
