/** Many invented appliances, each on a site and with an owner of its own, written straight into the tables: an old firm's whole stock for benchmarks. */
import { readFileSync } from 'node:fs';
import type { Database } from 'better-sqlite3';
import { FAMILY_NAMES, GIVEN_NAMES, STREETS } from '../../assets/demo/generator/words.ts';
import { foldForSearch } from '../../domain/text/foldForSearch.ts';
import { serialKeyOf } from '../../domain/text/serialKey.ts';
import { APP_ROOT, type TestCore } from './testCore.ts';

const SHEETS = ['quillstone-cinder-c', 'tarnhollow-foundry-h', 'sorrelgate-pumice-lp', 'ebberlund-skerry-s', null];
const AREAS = 60;

/** The invented makers' own sheets, which only the demo has from the start. */
export async function importMakersSheets(test: TestCore): Promise<void> {
  for (const name of SHEETS) {
    if (name === null) continue;
    await test.must('sheets.import', {
      fileName: `${name}.json`,
      text: readFileSync(`${APP_ROOT}/assets/sheets/${name}.json`, 'utf8'),
    });
  }
}

/** Most are registered and serviced; one in fifty has a registration still open, its run begun. */
export function fillAppliances(raw: Database, count: number): void {
  const staffId = raw.prepare('SELECT id FROM staff LIMIT 1').pluck().get() as string;
  const insert = (table: string, columns: string): ((...values: unknown[]) => void) => {
    const places = columns.split(',').map(() => '?');
    const statement = raw.prepare(`INSERT INTO ${table} (${columns}) VALUES (${places.join(',')})`);
    return (...values) => void statement.run(...values);
  };
  const party = insert('parties', 'id,kind,name,phone_typed,phone_e164,search_text');
  const customer = insert('customers', 'id,party_id,since');
  const site = insert(
    'sites',
    'id,customer_id,street,postcode,city,country,jurisdiction,time_zone,building_kind,search_text',
  );
  const appliance = insert('appliances', 'id,serial,serial_key,maker,model,sheet_id,rated_input_basis');
  const placement = insert('placements', 'id,appliance_id,site_id');
  const date = insert('appliance_dates', 'id,appliance_id,kind,happened_on,precision,source');
  const registration = insert('registrations', 'id,appliance_id,job_id,state,by,submitted_on,confirmed_on');
  const job = insert('jobs', 'id,kind,appliance_id,opened_at,closed_at,is_chargeable');
  const visit = insert('visits', 'id,site_id,state,planned_on,duration_min,outcome');
  const visitJob = insert('visit_jobs', 'id,visit_id,job_id');
  const run = insert('runs', 'id,job_id,sheet_revision_id,fuel,started_at');
  const revisionId = raw.prepare('SELECT id FROM sheet_revisions LIMIT 1').pluck().get() as string;
  const crew = insert('visit_crew', 'id,visit_id,staff_id,role');
  raw.transaction(() => {
    for (let index = 0; index < count; index += 1) {
      const id = (kind: number): string => uuid(kind, index);
      const installedOn = dayNumber(index % 3300);
      const startedOn = dayNumber((index % 3300) + 6);
      const { name, phone, phoneE164, street, postcode, serial } = wordsOf(index);
      party(id(14), 'person', name, phone, phoneE164, foldForSearch(`${name} ${phone} ${phoneE164}`));
      customer(id(15), id(14), installedOn);
      site(
        id(1),
        id(15),
        street,
        postcode,
        CITY,
        'CA',
        'north-america',
        'America/Halifax',
        'home',
        foldForSearch(`${street} ${postcode} ${CITY}`),
      );
      appliance(
        id(2),
        serial,
        serialKeyOf(serial),
        `Invented maker ${index % 7}`,
        'T 24',
        SHEETS[index % SHEETS.length],
        'gross',
      );
      placement(id(3), id(2), id(1));
      date(id(4), id(2), 'installed', installedOn, 'day', 'fitter');
      date(id(5), id(2), 'started', startedOn, 'day', 'startup visit');
      job(id(6), 'startup', id(2), `${startedOn}T08:00:00.000Z`, `${startedOn}T12:00:00.000Z`, 1);
      visit(id(7), id(1), 'finished', startedOn, 180, 'finished');
      visitJob(id(8), id(7), id(6));
      crew(id(9), id(7), staffId, 'lead');
      const isOpen = index % 50 === 0;
      registration(
        id(10),
        id(2),
        id(6),
        isOpen ? 'recording' : 'confirmed',
        'office',
        isOpen ? null : startedOn,
        isOpen ? null : startedOn,
      );
      if (isOpen) run(id(16), id(6), revisionId, 'natural-gas', `${startedOn}T08:00:00.000Z`);
      if (index % 2 === 1) continue;
      const servicedOn = dayNumber((index % 3300) + 370);
      job(id(11), 'service', id(2), `${servicedOn}T08:00:00.000Z`, `${servicedOn}T10:00:00.000Z`, 1);
      visit(id(12), id(1), 'finished', servicedOn, 90, 'finished');
      visitJob(id(13), id(12), id(11));
    }
  })();
}

const CITY = 'Graven Bay';
/** With the letters that are read for figures. */
const SERIALS_BEGIN = ['TK', 'QO', 'IB', 'SZ', 'GL'];

/** What somebody on the phone would say of it: always the same for the same number. */
export function wordsOf(index: number) {
  const number = String(index).padStart(6, '0');
  const line = String((index * 7919) % 10_000_000).padStart(7, '0');
  return {
    name: `${GIVEN_NAMES[index % GIVEN_NAMES.length]} ${FAMILY_NAMES[(index * 7) % 19]} ${FAMILY_NAMES[(index * 13) % 20]}`,
    phone: `902 ${line.slice(0, 3)} ${line.slice(3)}`,
    phoneE164: `+1902${line}`,
    street: `${(index * 31) % 4999} ${STREETS[(index * 3) % STREETS.length]}`,
    postcode: `Q${String(index % AREAS).padStart(2, '0')} ${index % 9}XX`,
    serial: `${SERIALS_BEGIN[index % SERIALS_BEGIN.length]}-${number.slice(0, 3)} ${number.slice(3)}`,
  };
}

function uuid(kind: number, index: number): string {
  return `018f0000-0000-7${String(kind).padStart(3, '0')}-8000-${String(index).padStart(12, '0')}`;
}

function dayNumber(after: number): string {
  return new Date(Date.UTC(2017, 0, 2) + after * 86_400_000).toISOString().slice(0, 10);
}
