/** Pages of what falls due, by day, with whose appliance it is and where it stands. */
import type { Database } from 'better-sqlite3';
import type { Sureness } from '../../domain/service/serviceRule.ts';
import { rawStatement } from '../rawStatement.ts';

export type DueKind = 'registration' | 'service' | 'first-call' | 'look-in';

export type DueListRow = {
  readonly applianceId: string;
  readonly kind: DueKind;
  readonly windowFrom: string;
  readonly dueOn: string;
  readonly latestOn: string;
  readonly sureness: Sureness;
  readonly stage: 'not-begun' | 'recording' | 'submitted' | 'confirmed' | null;
  readonly month: string;
  readonly area: string;
  readonly timeZone: string;
  readonly jobId: string | null;
  readonly visitId: string | null;
  readonly bookedOn: string | null;
  readonly serial: string;
  readonly maker: string;
  readonly model: string;
  readonly siteId: string | null;
  readonly street: string | null;
  readonly postcode: string | null;
  readonly city: string | null;
  readonly region: string | null;
  readonly country: string | null;
  readonly customerId: string | null;
  readonly partyId: string | null;
  readonly customerName: string | null;
  readonly technicianName: string | null;
  readonly runId: string | null;
  readonly isSealed: 0 | 1;
  /** null: not counted. */
  readonly gapCount: number | null;
};

export type DueFilter = {
  readonly kinds: readonly DueKind[];
  readonly isOpen: boolean;
  readonly limit: number;
  readonly after: string | null;
  readonly today: string;
  readonly stage?: string | undefined;
  readonly isReady?: boolean | undefined;
  readonly dueBefore?: string | undefined;
  readonly dueFrom?: string | undefined;
  readonly latestFrom?: string | undefined;
  /** Registrations that are not with the maker yet. */
  readonly isToSubmit?: true | undefined;
  /** Registrations of whose time half is over by this day: 14 days before the end at the latest. */
  readonly halfOverBy?: string | undefined;
  readonly windowBegunBy?: string | undefined;
  readonly staffId?: string | undefined;
  readonly maker?: string | undefined;
  readonly area?: string | undefined;
  readonly months?: { readonly from: string | null; readonly to: string } | undefined;
  readonly isBooked?: boolean | undefined;
  readonly applianceIds?: readonly string[] | undefined;
  /** Only whose customer was ever asked about service by this channel; the newest word is for the reader to look at. */
  readonly askedAbout?: string | undefined;
};

/** Not with the maker yet: only these can be late. */
const TO_SUBMIT = "stage IN ('not-begun', 'recording')";

export function listDues(raw: Database, filter: DueFilter): readonly DueListRow[] {
  const [kind, ...otherKinds] = filter.kinds;
  const after = filter.after === null ? null : readCursor(filter.after);
  const parts: readonly (readonly [sql: string, ...values: (string | number)[]] | null)[] = [
    otherKinds.length === 0
      ? ['d.kind = ?', kind ?? '']
      : [`d.kind IN (${filter.kinds.map(() => '?').join(', ')})`, ...filter.kinds],
    ['d.is_open = ?', filter.isOpen ? 1 : 0],
    ['(d.gone_on IS NULL OR d.gone_on >= ?)', filter.today],
    filter.stage === undefined ? null : ['d.stage = ?', filter.stage],
    filter.isReady === undefined
      ? null
      : ['coalesce(r.sealed_at IS NOT NULL AND g.gap_count = 0, 0) = ?', filter.isReady ? 1 : 0],
    filter.dueBefore === undefined ? null : ['d.due_on < ?', filter.dueBefore],
    filter.dueFrom === undefined ? null : ['d.due_on >= ?', filter.dueFrom],
    filter.latestFrom === undefined ? null : ['d.latest_on >= ?', filter.latestFrom],
    filter.isToSubmit === undefined ? null : [`d.${TO_SUBMIT}`],
    filter.halfOverBy === undefined
      ? null
      : [
          `(julianday(d.due_on) - julianday(?) <= 14
             OR 2 * (julianday(d.due_on) - julianday(?)) <= julianday(d.due_on) - julianday(d.window_from))`,
          filter.halfOverBy,
          filter.halfOverBy,
        ],
    filter.windowBegunBy === undefined ? null : ['d.window_from <= ?', filter.windowBegunBy],
    filter.staffId === undefined ? null : ['d.staff_id = ?', filter.staffId],
    filter.maker === undefined ? null : ['d.maker = ?', filter.maker],
    filter.area === undefined ? null : ['d.area = ?', filter.area],
    filter.months === undefined ? null : ['d.month <= ?', filter.months.to],
    filter.months?.from == null ? null : ['d.month >= ?', filter.months.from],
    filter.isBooked === undefined ? null : ['(d.visit_id IS NOT NULL) = ?', filter.isBooked ? 1 : 0],
    filter.applianceIds === undefined
      ? null
      : ['d.appliance_id IN (SELECT value FROM json_each(?))', JSON.stringify(filter.applianceIds)],
    filter.askedAbout === undefined
      ? null
      : [
          "EXISTS (SELECT 1 FROM consents k WHERE k.party_id = c.party_id AND k.purpose = 'service-due' AND k.channel = ? AND k.granted = 1)",
          filter.askedAbout,
        ],
    after === null ? null : ['(d.due_on, d.appliance_id, d.kind) > (?, ?, ?)', ...after],
  ];
  const given = parts.filter((part) => part !== null);
  const where = given.map(([sql]) => sql).join(' AND ');
  const values = given.flatMap(([, ...one]) => one);
  const order = 'ORDER BY d.due_on, d.appliance_id, d.kind LIMIT ?';
  return rawStatement(raw, `${SELECT} WHERE ${where} ${order}`).all(...values, filter.limit) as DueListRow[];
}

/** The cursor that leads on from a row. */
export function cursorAfter(row: DueListRow): string {
  return `${row.dueOn} ${row.applianceId} ${row.kind}`;
}

function readCursor(text: string): readonly [string, string, string] {
  const [dueOn = '', applianceId = '', kind = ''] = text.split(' ');
  return [dueOn, applianceId, kind];
}

/** Columns named one by one: the index gives the page, the rest is looked up for its rows alone. */
const SELECT = `
  SELECT d.appliance_id AS applianceId, d.kind, d.window_from AS windowFrom, d.due_on AS dueOn, d.latest_on AS latestOn,
    d.sureness, d.stage, d.month, d.area, d.time_zone AS timeZone, d.job_id AS jobId, d.visit_id AS visitId,
    d.booked_on AS bookedOn, a.serial, a.maker, a.model, s.id AS siteId, s.street, s.postcode, s.city, s.region, s.country,
    c.id AS customerId, c.party_id AS partyId, q.name AS customerName, f.name AS technicianName,
    r.id AS runId, r.sealed_at IS NOT NULL AS isSealed, g.gap_count AS gapCount
  FROM appliance_dues d
  JOIN appliances a ON a.id = d.appliance_id
  LEFT JOIN placements p ON p.appliance_id = d.appliance_id AND p.to_on IS NULL
  LEFT JOIN sites s ON s.id = p.site_id
  LEFT JOIN customers c ON c.id = s.customer_id
  LEFT JOIN parties q ON q.id = c.party_id
  LEFT JOIN staff f ON f.id = d.staff_id
  LEFT JOIN runs r ON d.kind = 'registration' AND r.job_id = d.job_id
  LEFT JOIN registration_gaps g ON g.run_id = r.id`;

export type RoundRow = {
  readonly month: string;
  readonly area: string;
  readonly count: number;
  readonly bookedCount: number;
  readonly byOn: string;
  readonly pastLatestCount: number;
};

/** Services by month and area; every earlier month counts as this one. */
export function listRounds(raw: Database, today: string, lastMonth: string): readonly RoundRow[] {
  return rawStatement(
    raw,
    `SELECT max(month, substr(@today, 1, 7)) AS month, area, count(*) AS count,
       sum(visit_id IS NOT NULL) AS bookedCount, min(latest_on) AS byOn, sum(latest_on < @today) AS pastLatestCount
     FROM appliance_dues WHERE kind = 'service' AND is_open = 1 AND month <= @lastMonth
     GROUP BY 1, 2 ORDER BY 1, count(*) DESC, 2`,
  ).all({ today, lastMonth }) as RoundRow[];
}

export function countContacts(
  raw: Database,
  today: string,
): readonly { readonly kind: 'first-call' | 'look-in'; readonly count: number }[] {
  return rawStatement(
    raw,
    `SELECT kind, count(*) AS count FROM appliance_dues
     WHERE kind IN ('first-call', 'look-in') AND is_open = 1 AND window_from <= ? AND gone_on >= ? GROUP BY kind ORDER BY kind`,
  ).all(today, today) as { kind: 'first-call' | 'look-in'; count: number }[];
}

export type DeadlineCounts = {
  readonly withMaker: number;
  readonly weeks: readonly { readonly mondayOn: string; readonly count: number }[];
  readonly technicians: readonly { readonly staffId: string; readonly name: string; readonly count: number }[];
  readonly makers: readonly { readonly maker: string; readonly count: number }[];
};

/** Registrations to submit whose last day may be over somewhere, by zone and day: whether it is, depends on the place. */
export function countByZoneAndDay(
  raw: Database,
  filter: { readonly before: string; readonly staffId: string | null; readonly maker: string | null },
): readonly { readonly timeZone: string; readonly dueOn: string; readonly count: number }[] {
  return rawStatement(
    raw,
    `SELECT time_zone AS timeZone, due_on AS dueOn, count(*) AS count FROM appliance_dues d
     WHERE kind = 'registration' AND is_open = 1 AND ${TO_SUBMIT} AND due_on < @before AND (gone_on IS NULL OR gone_on >= @before)
       AND (@staffId IS NULL OR staff_id = @staffId) AND (@maker IS NULL OR maker = @maker)
     GROUP BY 1, 2`,
  ).all(filter) as { timeZone: string; dueOn: string; count: number }[];
}

/** Registrations to submit by the week of their last day; all open ones by technician and by maker; those with the maker. */
export function countDeadlines(
  raw: Database,
  filter: { readonly today: string; readonly staffId: string | null; readonly maker: string | null },
): DeadlineCounts {
  const open = `FROM appliance_dues d WHERE d.kind = 'registration' AND d.is_open = 1
    AND (d.gone_on IS NULL OR d.gone_on >= @today)`;
  const narrowed = `${open} AND (@staffId IS NULL OR d.staff_id = @staffId) AND (@maker IS NULL OR d.maker = @maker)`;
  return {
    // 'weekday 0' goes to the next Sunday, or stays on it: six days before is that week's Monday.
    weeks: rawStatement(
      raw,
      `SELECT date(d.due_on, 'weekday 0', '-6 days') AS mondayOn, count(*) AS count ${narrowed} AND ${TO_SUBMIT} GROUP BY 1 ORDER BY 1`,
    ).all(filter) as { mondayOn: string; count: number }[],
    withMaker: rawStatement(raw, `SELECT count(*) ${narrowed} AND NOT ${TO_SUBMIT}`).pluck().get(filter) as number,
    technicians: rawStatement(
      raw,
      `SELECT d.staff_id AS staffId, (SELECT name FROM staff WHERE id = d.staff_id) AS name, count(*) AS count
       ${open} AND d.staff_id IS NOT NULL GROUP BY 1 ORDER BY 2`,
    ).all({ today: filter.today }) as { staffId: string; name: string; count: number }[],
    makers: rawStatement(raw, `SELECT d.maker AS maker, count(*) AS count ${open} GROUP BY 1 ORDER BY 1`).all({
      today: filter.today,
    }) as { maker: string; count: number }[],
  };
}
