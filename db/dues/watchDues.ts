/**
 * Which appliances' due rows no longer fit the truth. Triggers of this connection note it whatever way a row was written,
 * so no way in can forget it; they and their table are temporary: no migration drops them, and nothing of them travels.
 */
import type { Database } from 'better-sqlite3';

export function watchDues(raw: Database): void {
  raw.exec('CREATE TEMP TABLE stale_dues (appliance_id TEXT PRIMARY KEY) WITHOUT ROWID, STRICT');
  for (const [index, { table, events, note }] of WATCHED.entries()) {
    for (const event of events) {
      const row = event.startsWith('DELETE') ? 'OLD' : 'NEW';
      raw.exec(
        `CREATE TEMP TRIGGER watch_dues_${index}_${event.slice(0, 6).toLowerCase()} AFTER ${event} ON main.${table} BEGIN ${note.replaceAll('ROW.', `${row}.`)}; END`,
      );
    }
  }
}

const NOTE = 'INSERT OR IGNORE INTO stale_dues';
const BY_APPLIANCE = `${NOTE} VALUES (ROW.appliance_id)`;
const BY_JOB = `${NOTE} SELECT appliance_id FROM jobs WHERE id = ROW.job_id`;
const BY_VISIT = `${NOTE} SELECT j.appliance_id FROM visit_jobs v JOIN jobs j ON j.id = v.job_id WHERE v.visit_id = ROW`;
const UNCOUNT = 'DELETE FROM registration_gaps';
const BY_RUN = `${UNCOUNT} WHERE run_id = ROW.run_id`;
const BY_RUN_OF_APPLIANCE = `${UNCOUNT} WHERE run_id IN (SELECT r.id FROM runs r JOIN jobs j ON j.id = r.job_id WHERE j.appliance_id = ROW`;
/** A sealed record speaks for itself; only what is still being recorded reads these. */
const UNSEALED = `${UNCOUNT} WHERE is_sealed = 0`;

type Watched = { readonly table: string; readonly events: readonly string[]; readonly note: string };

const ALL = ['INSERT', 'UPDATE', 'DELETE'] as const;

const WATCHED: readonly Watched[] = [
  { table: 'appliances', events: ALL, note: `${NOTE} VALUES (ROW.id)` },
  ...['appliance_dates', 'placements', 'jobs', 'registrations', 'first_year_contacts', 'service_agreements'].map(
    (table) => ({
      table,
      events: ALL,
      note: BY_APPLIANCE,
    }),
  ),
  {
    table: 'sites',
    events: ['UPDATE OF time_zone, postcode'],
    note: `${NOTE} SELECT appliance_id FROM placements WHERE site_id = ROW.id`,
  },
  { table: 'visit_jobs', events: ALL, note: BY_JOB },
  {
    table: 'visits',
    events: ['UPDATE OF state, outcome, planned_on, started_at'],
    note: `${BY_VISIT}.id`,
  },
  { table: 'visit_crew', events: ALL, note: `${BY_VISIT}.visit_id` },
  {
    table: 'sheet_revisions',
    events: ['INSERT'],
    note: `${NOTE} SELECT id FROM appliances WHERE sheet_id = ROW.sheet_id`,
  },
  // Cover is counted by the revision that the startup was run with.
  { table: 'runs', events: ['INSERT', 'UPDATE OF sealed_at', 'DELETE'], note: BY_JOB },
  // What a packet lacks is dearer to count: it is only marked here and counted again when somebody looks.
  ...['run_answers', 'readings', 'run_holds', 'run_tunings', 'firing_point_marks', 'sign_offs', 'seals'].map(
    (table) => ({ table, events: ALL, note: BY_RUN }),
  ),
  { table: 'runs', events: ['UPDATE OF sealed_at, reopened_at'], note: `${UNCOUNT} WHERE run_id = ROW.id` },
  { table: 'attachment_links', events: ALL, note: `${UNCOUNT} WHERE run_id = ROW.entity_id` },
  ...['appliance_dates', 'registrations', 'make_safes', 'fuel_states'].map((table) => ({
    table,
    events: ALL,
    note: `${BY_RUN_OF_APPLIANCE}.appliance_id)`,
  })),
  ...['licences', 'staff'].map((table) => ({ table, events: ALL, note: UNCOUNT })),
  ...[
    'parties',
    'customers',
    'sites',
    'site_emitters',
    'party_roles',
    'permits',
    'companies',
    'instruments',
    'calibrations',
    'gas_supplies',
    'appliances',
    'placements',
    'visits',
    'visit_crew',
  ].map((table) => ({ table, events: ALL, note: UNSEALED })),
];
