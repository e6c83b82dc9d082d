/**
 * Dates of cover, registration and service worked out by hand, on paper and with a printed calendar, before and without
 * the code. Each says why in one sentence and by which rule. What a maker asks for is an invented sheet's own wording.
 */
import type { RegistrationWindow } from '../../../domain/coverage/registrationDeadline.ts';
import type { CoverDate } from '../../../domain/procedure/modelSheet.ts';

/** Council Regulation (EEC, Euratom) No 1182/71 of 3 June 1971 on periods, dates and time limits. From memory. */
export const EU_EVENT = 'Reg. 1182/71 art. 3(1): the day of the event is not counted';
export const EU_DAYS = 'Reg. 1182/71 art. 3(1) and 3(2)(b): day 1 is the day after, the period ends with its last day';
export const EU_MONTHS = 'Reg. 1182/71 art. 3(2)(c): ends on the same date; a date the month lacks is its last day';
/** German Civil Code, sections on periods. From memory. */
export const BGB_DAYS = 'BGB §§ 187(1), 188(1): the day of the event is not counted, the last day is';
export const BGB_MONTHS = 'BGB § 188(2): ends on the day whose number is that of the event';
export const BGB_SHORT = 'BGB § 188(3): a day the last month lacks becomes its last day';
/** England and Wales: the corresponding date rule as the House of Lords stated it. From memory. */
export const DODDS = 'Dodds v Walker [1981] 1 WLR 1027: the corresponding date, or the last day of a shorter month';
export const LEAP =
  'Gregorian calendar, ISO 8601: leap years are those divisible by 4, of the centuries only those by 400';
export const NO_MOVE =
  'Reg. 1182/71 art. 3(4) and BGB § 193 move a last day off a Sunday for acts of law; an invented sheet’s own term does not, and the earlier day is the cautious one';
export const SHEET = 'the invented sheet’s own words';
export const COMMON = 'common practice, no source';
export const TZ = 'IANA time zone database, from memory';

export type PeriodCase = {
  readonly from: string;
  readonly period: { readonly days: number } | { readonly months: number };
  readonly endsOn: string;
  readonly weekday: string;
  readonly why: string;
  readonly rule: string;
};

export const PERIOD_CASES: readonly PeriodCase[] = [
  {
    from: '2025-10-14',
    period: { days: 30 },
    endsOn: '2025-11-13',
    weekday: 'Thu',
    why: '31 October is day 17, 13 more lead to 13 November',
    rule: EU_DAYS,
  },
  {
    from: '2026-01-31',
    period: { days: 30 },
    endsOn: '2026-03-02',
    weekday: 'Mon',
    why: '28 February is day 28, 1 March 29, 2 March 30',
    rule: BGB_DAYS,
  },
  {
    from: '2028-01-31',
    period: { days: 30 },
    endsOn: '2028-03-01',
    weekday: 'Wed',
    why: 'in a leap year 29 February is day 29, 1 March day 30',
    rule: LEAP,
  },
  {
    from: '2026-12-31',
    period: { days: 60 },
    endsOn: '2027-03-01',
    weekday: 'Mon',
    why: '31 January is day 31, 28 February day 59',
    rule: EU_DAYS,
  },
  {
    from: '2027-11-30',
    period: { days: 90 },
    endsOn: '2028-02-28',
    weekday: 'Mon',
    why: '31 December is day 31, 31 January day 62, 28 more stay before the leap day',
    rule: BGB_DAYS,
  },
  {
    from: '2027-12-31',
    period: { days: 1 },
    endsOn: '2028-01-01',
    weekday: 'Sat',
    why: 'one day over the turn of the year',
    rule: EU_EVENT,
  },
  {
    from: '2028-02-28',
    period: { days: 1 },
    endsOn: '2028-02-29',
    weekday: 'Tue',
    why: 'the day after 28 February of a leap year',
    rule: LEAP,
  },
  {
    from: '2100-02-28',
    period: { days: 1 },
    endsOn: '2100-03-01',
    weekday: 'Mon',
    why: '2100 is a century not divisible by 400',
    rule: LEAP,
  },
  {
    from: '2027-03-01',
    period: { days: 365 },
    endsOn: '2028-02-29',
    weekday: 'Tue',
    why: 'a year of days stops one short when a leap day lies between',
    rule: LEAP,
  },
  {
    from: '2026-01-30',
    period: { days: 30 },
    endsOn: '2026-03-01',
    weekday: 'Sun',
    why: 'the last day is a Sunday and stays there',
    rule: NO_MOVE,
  },
  {
    from: '2026-02-20',
    period: { days: 30 },
    endsOn: '2026-03-22',
    weekday: 'Sun',
    why: 'clocks go forward on 8 March in between: a day of 23 hours is a day',
    rule: EU_DAYS,
  },
  {
    from: '2011-12-28',
    period: { days: 3 },
    endsOn: '2011-12-31',
    weekday: 'Sat',
    why: 'days are those of the calendar, also where a place skipped 30 December 2011',
    rule: TZ,
  },
  {
    from: '2026-01-31',
    period: { months: 1 },
    endsOn: '2026-02-28',
    weekday: 'Sat',
    why: 'February has no 31st',
    rule: BGB_SHORT,
  },
  {
    from: '2028-01-31',
    period: { months: 1 },
    endsOn: '2028-02-29',
    weekday: 'Tue',
    why: 'the last day of a leap February is the 29th',
    rule: EU_MONTHS,
  },
  {
    from: '2026-01-28',
    period: { months: 1 },
    endsOn: '2026-02-28',
    weekday: 'Sat',
    why: 'the same number, which is also the last day',
    rule: BGB_MONTHS,
  },
  {
    from: '2026-02-28',
    period: { months: 1 },
    endsOn: '2026-03-28',
    weekday: 'Sat',
    why: 'the number counts, not that it was a month’s last day',
    rule: DODDS,
  },
  {
    from: '2025-11-30',
    period: { months: 3 },
    endsOn: '2026-02-28',
    weekday: 'Sat',
    why: 'February has no 30th',
    rule: DODDS,
  },
  {
    from: '2027-11-30',
    period: { months: 3 },
    endsOn: '2028-02-29',
    weekday: 'Tue',
    why: 'in a leap year the 29th is its last day',
    rule: DODDS,
  },
  {
    from: '2026-05-31',
    period: { months: 3 },
    endsOn: '2026-08-31',
    weekday: 'Mon',
    why: 'June in between is shorter and plays no part',
    rule: BGB_MONTHS,
  },
  {
    from: '2026-08-31',
    period: { months: 6 },
    endsOn: '2027-02-28',
    weekday: 'Sun',
    why: 'half a year from a 31st into February',
    rule: BGB_SHORT,
  },
  {
    from: '2028-02-29',
    period: { months: 12 },
    endsOn: '2029-02-28',
    weekday: 'Wed',
    why: '2029 has no 29 February',
    rule: EU_MONTHS,
  },
  {
    from: '2028-02-29',
    period: { months: 48 },
    endsOn: '2032-02-29',
    weekday: 'Sun',
    why: 'four years on there is one again',
    rule: LEAP,
  },
  {
    from: '2026-02-28',
    period: { months: 24 },
    endsOn: '2028-02-28',
    weekday: 'Mon',
    why: 'from the 28th to the 28th, although 2028 has a 29th',
    rule: BGB_MONTHS,
  },
  {
    from: '2027-03-01',
    period: { months: 12 },
    endsOn: '2028-03-01',
    weekday: 'Wed',
    why: 'a leap day in between changes nothing in months',
    rule: BGB_MONTHS,
  },
  {
    from: '2026-03-31',
    period: { months: 120 },
    endsOn: '2036-03-31',
    weekday: 'Mon',
    why: 'ten years, the same day',
    rule: EU_MONTHS,
  },
  {
    from: '2025-12-31',
    period: { months: 2 },
    endsOn: '2026-02-28',
    weekday: 'Sat',
    why: 'over the turn of the year into a short month',
    rule: BGB_SHORT,
  },
];

type DatedCase = readonly [kind: CoverDate, on: string, precision?: 'day' | 'month' | 'year'];

export type RegistrationCase = {
  readonly sheet: { readonly window: RegistrationWindow; readonly from: CoverDate | 'earliest' } | null;
  readonly dates: readonly DatedCase[];
  readonly dueOn: string | null;
  readonly from?: CoverDate;
  readonly isAssumed?: boolean;
  readonly why: string;
  readonly rule: string;
};

export const REGISTRATION_CASES: readonly RegistrationCase[] = [
  {
    sheet: { window: { days: 30 }, from: 'installed' },
    dates: [
      ['installed', '2025-10-14'],
      ['started', '2025-10-20'],
    ],
    dueOn: '2025-11-13',
    from: 'installed',
    isAssumed: false,
    why: 'the card on the pile (F-18): counted from installation, not from the later startup',
    rule: SHEET,
  },
  {
    sheet: { window: { days: 60 }, from: 'started' },
    dates: [
      ['installed', '2026-02-20'],
      ['started', '2026-03-02'],
    ],
    dueOn: '2026-05-01',
    from: 'started',
    isAssumed: false,
    why: '31 March is day 29, 30 April day 59, 1 May day 60',
    rule: SHEET,
  },
  {
    sheet: { window: { days: 90 }, from: 'earliest' },
    dates: [
      ['started', '2026-03-02'],
      ['sold', '2026-01-15'],
      ['installed', '2026-02-20'],
    ],
    dueOn: '2026-04-15',
    from: 'sold',
    isAssumed: false,
    why: 'the sale is the earliest: 31 January is day 16, 28 February 44, 31 March 75, 15 more',
    rule: SHEET,
  },
  {
    sheet: { window: { days: 30 }, from: 'earliest' },
    dates: [
      ['made', '2025-03-01'],
      ['started', '2026-03-02'],
    ],
    dueOn: '2026-04-01',
    from: 'started',
    isAssumed: false,
    why: 'the day of making never starts a registration window',
    rule: COMMON,
  },
  {
    sheet: { window: { months: 3 }, from: 'title-transfer' },
    dates: [
      ['installed', '2025-06-02'],
      ['title-transfer', '2025-11-30'],
    ],
    dueOn: '2026-02-28',
    from: 'title-transfer',
    isAssumed: false,
    why: 'a new build counts from the title transfer; February has no 30th',
    rule: EU_MONTHS,
  },
  {
    sheet: { window: { months: 3 }, from: 'title-transfer' },
    dates: [['installed', '2025-06-02']],
    dueOn: '2025-09-02',
    from: 'installed',
    isAssumed: true,
    why: 'the title transfer is not known, so the earliest known date is taken and said',
    rule: COMMON,
  },
  {
    sheet: null,
    dates: [
      ['started', '2026-01-31'],
      ['occupied', '2026-02-10'],
    ],
    dueOn: '2026-03-02',
    from: 'started',
    isAssumed: true,
    why: 'no sheet: shortest window, earliest date',
    rule: COMMON,
  },
  {
    sheet: null,
    dates: [['made', '2026-01-31']],
    dueOn: null,
    why: 'nothing is known that a window could run from',
    rule: COMMON,
  },
  {
    sheet: { window: { days: 30 }, from: 'installed' },
    dates: [['installed', '2025-10-01', 'month']],
    dueOn: '2025-10-31',
    from: 'installed',
    isAssumed: false,
    why: 'known only to October: counted from the 1st, the cautious end',
    rule: COMMON,
  },
  {
    sheet: { window: { days: 30 }, from: 'installed' },
    dates: [['installed', '2025-10-20', 'month']],
    dueOn: '2025-10-31',
    from: 'installed',
    isAssumed: false,
    why: 'the day beside a month is not known and plays no part',
    rule: COMMON,
  },
  {
    sheet: { window: { days: 90 }, from: 'sold' },
    dates: [['sold', '2025-06-15', 'year']],
    dueOn: '2025-04-01',
    from: 'sold',
    isAssumed: false,
    why: 'known only to 2025: from 1 January 30 + 28 + 31 days lead to 31 March, one more',
    rule: COMMON,
  },
  {
    sheet: { window: { days: 30 }, from: 'earliest' },
    dates: [
      ['installed', '2026-04-01', 'month'],
      ['started', '2026-04-03'],
    ],
    dueOn: '2026-05-01',
    from: 'installed',
    isAssumed: false,
    why: 'a month that may have begun before the other date is the earlier one',
    rule: COMMON,
  },
];

/** What the office's clock says where the boiler stands, against a last day of 13 November 2025. */
export const ZONE_CASES: readonly {
  readonly at: string;
  readonly zone: string;
  readonly today: string;
  readonly daysLeft: number;
  readonly why: string;
  readonly rule: string;
}[] = [
  {
    at: '2025-11-14T03:30:00Z',
    zone: 'America/Halifax',
    today: '2025-11-13',
    daysLeft: 0,
    why: '23:30 on the last day, four hours behind UTC',
    rule: TZ,
  },
  {
    at: '2025-11-14T04:00:00Z',
    zone: 'America/Halifax',
    today: '2025-11-14',
    daysLeft: -1,
    why: 'midnight: the last day is over',
    rule: EU_DAYS,
  },
  {
    at: '2025-11-14T03:30:00Z',
    zone: 'Europe/Berlin',
    today: '2025-11-14',
    daysLeft: -1,
    why: '04:30 of the day after, one hour ahead',
    rule: TZ,
  },
  {
    at: '2025-11-13T11:30:00Z',
    zone: 'Pacific/Auckland',
    today: '2025-11-14',
    daysLeft: -1,
    why: '00:30, thirteen hours ahead in summer',
    rule: TZ,
  },
  {
    at: '2025-11-05T12:00:00Z',
    zone: 'Europe/London',
    today: '2025-11-05',
    daysLeft: 8,
    why: 'the card on the pile (F-18): 8 days left',
    rule: TZ,
  },
];

type RuleCase = {
  readonly every: number;
  readonly grace: number;
  readonly from: 'anniversary' | 'last-service';
  readonly earlyCounts?: false;
};

export type ServiceCase = {
  readonly sheet: RuleCase | null;
  readonly started: string;
  readonly services: readonly string[];
  readonly dueOn: string;
  readonly latestOn: string;
  /** Of the services on file, in order. */
  readonly marks?: readonly ('in time' | 'late' | 'missed')[];
  readonly why: string;
  readonly rule: string;
};

const YEARLY: RuleCase = { every: 12, grace: 1, from: 'anniversary' };
const FROM_LAST: RuleCase = { every: 12, grace: 2, from: 'last-service' };

export const SERVICE_CASES: readonly ServiceCase[] = [
  {
    sheet: YEARLY,
    started: '2025-10-14',
    services: [],
    dueOn: '2026-10-14',
    latestOn: '2026-11-14',
    marks: [],
    why: 'the first anniversary and a month of grace',
    rule: EU_MONTHS,
  },
  {
    sheet: YEARLY,
    started: '2025-10-14',
    services: ['2026-09-10'],
    dueOn: '2027-10-14',
    latestOn: '2027-11-14',
    marks: ['in time'],
    why: 'done early: the anniversary stays where it is',
    rule: SHEET,
  },
  {
    sheet: YEARLY,
    started: '2025-10-14',
    services: ['2026-11-05'],
    dueOn: '2027-10-14',
    latestOn: '2027-11-14',
    marks: ['in time'],
    why: 'done in the grace: the next one is not pushed back',
    rule: SHEET,
  },
  {
    sheet: YEARLY,
    started: '2025-10-14',
    services: ['2026-11-14'],
    dueOn: '2027-10-14',
    latestOn: '2027-11-14',
    marks: ['in time'],
    why: 'the last day of grace is still in time',
    rule: EU_DAYS,
  },
  {
    sheet: YEARLY,
    started: '2025-10-14',
    services: ['2026-11-15'],
    dueOn: '2027-10-14',
    latestOn: '2027-11-14',
    marks: ['late'],
    why: 'a day after the grace is late, and the next is due all the same',
    rule: SHEET,
  },
  {
    sheet: YEARLY,
    started: '2023-10-14',
    services: ['2025-10-10'],
    dueOn: '2026-10-14',
    latestOn: '2026-11-14',
    marks: ['missed', 'in time'],
    why: 'the second year’s service does not make up for the first',
    rule: SHEET,
  },
  {
    sheet: YEARLY,
    started: '2025-01-01',
    services: ['2026-07-01'],
    dueOn: '2027-01-01',
    latestOn: '2027-02-01',
    marks: ['late'],
    why: 'half way between two anniversaries belongs to the earlier, the cautious side',
    rule: COMMON,
  },
  {
    sheet: YEARLY,
    started: '2025-01-01',
    services: ['2026-07-02'],
    dueOn: '2028-01-01',
    latestOn: '2028-02-01',
    marks: ['missed', 'in time'],
    why: 'a day past half way belongs to the later one, and the earlier was missed',
    rule: COMMON,
  },
  {
    sheet: YEARLY,
    started: '2025-10-14',
    services: ['2025-12-10'],
    dueOn: '2026-10-14',
    latestOn: '2026-11-14',
    marks: [],
    why: 'a visit two months after startup is no yearly service',
    rule: COMMON,
  },
  {
    sheet: YEARLY,
    started: '2028-02-29',
    services: [],
    dueOn: '2029-02-28',
    latestOn: '2029-03-29',
    marks: [],
    why: 'twelve months end on the 28th; thirteen reach 29 March, counted from the anchor',
    rule: EU_MONTHS,
  },
  {
    sheet: YEARLY,
    started: '2028-02-29',
    services: ['2029-02-20', '2030-02-20', '2031-02-20'],
    dueOn: '2032-02-29',
    latestOn: '2032-03-29',
    marks: ['in time', 'in time', 'in time'],
    why: 'the fourth anniversary of a leap day is a leap day',
    rule: LEAP,
  },
  {
    sheet: { every: 6, grace: 1, from: 'anniversary' },
    started: '2025-08-31',
    services: ['2026-02-20'],
    dueOn: '2026-08-31',
    latestOn: '2026-09-30',
    marks: ['in time'],
    why: 'no drift: the second due day is the 31st again; thirteen months end in a month of 30 days',
    rule: DODDS,
  },
  {
    sheet: { every: 1, grace: 1, from: 'anniversary' },
    started: '2026-01-31',
    services: [],
    dueOn: '2026-02-28',
    latestOn: '2026-03-31',
    marks: [],
    why: 'the grace is counted from the anchor too: 31 March, not 28 March',
    rule: BGB_SHORT,
  },
  {
    sheet: { every: 12, grace: 0, from: 'anniversary' },
    started: '2026-06-15',
    services: [],
    dueOn: '2027-06-15',
    latestOn: '2027-06-15',
    marks: [],
    why: 'without grace the due day is the latest day',
    rule: SHEET,
  },
  {
    sheet: { every: 12, grace: 2, from: 'anniversary', earlyCounts: false },
    started: '2024-03-10',
    services: ['2024-12-05'],
    dueOn: '2025-03-10',
    latestOn: '2025-05-10',
    marks: [],
    why: 'the sheet takes twelve months ± 2: three months early does not count',
    rule: SHEET,
  },
  {
    sheet: { every: 12, grace: 2, from: 'anniversary', earlyCounts: false },
    started: '2024-03-10',
    services: ['2025-01-10'],
    dueOn: '2026-03-10',
    latestOn: '2026-05-10',
    marks: ['in time'],
    why: 'exactly two months early is inside ± 2',
    rule: SHEET,
  },
  {
    sheet: FROM_LAST,
    started: '2024-03-10',
    services: [],
    dueOn: '2025-03-10',
    latestOn: '2025-05-10',
    marks: [],
    why: 'before any service the startup is counted from',
    rule: SHEET,
  },
  {
    sheet: FROM_LAST,
    started: '2024-03-10',
    services: ['2025-05-05'],
    dueOn: '2026-05-05',
    latestOn: '2026-07-05',
    marks: ['in time'],
    why: 'done in the grace: from the last service the next moves back too',
    rule: SHEET,
  },
  {
    sheet: FROM_LAST,
    started: '2024-03-10',
    services: ['2025-02-01'],
    dueOn: '2026-02-01',
    latestOn: '2026-04-01',
    marks: ['in time'],
    why: 'done early: the next comes earlier too',
    rule: SHEET,
  },
  {
    sheet: FROM_LAST,
    started: '2024-03-10',
    services: ['2025-05-11'],
    dueOn: '2026-05-11',
    latestOn: '2026-07-11',
    marks: ['late'],
    why: 'a day after the grace is late; the next is counted from it',
    rule: SHEET,
  },
  {
    sheet: FROM_LAST,
    started: '2024-03-10',
    services: ['2026-04-20', '2025-03-01'],
    dueOn: '2027-04-20',
    latestOn: '2027-06-20',
    marks: ['in time', 'in time'],
    why: 'counted from the later of two, in whatever order they were typed',
    rule: SHEET,
  },
  {
    sheet: { every: 12, grace: 1, from: 'last-service' },
    started: '2027-02-10',
    services: ['2028-02-29'],
    dueOn: '2029-02-28',
    latestOn: '2029-03-29',
    marks: ['in time'],
    why: 'a service on a leap day: due on the 28th, grace from the 29th',
    rule: EU_MONTHS,
  },
  {
    sheet: { every: 6, grace: 1, from: 'last-service' },
    started: '2026-03-01',
    services: ['2026-08-31'],
    dueOn: '2027-02-28',
    latestOn: '2027-03-31',
    marks: ['in time'],
    why: 'six months from a 31st end on 28 February, seven on 31 March',
    rule: BGB_SHORT,
  },
  {
    sheet: { every: 12, grace: 2, from: 'last-service', earlyCounts: false },
    started: '2024-03-10',
    services: ['2024-12-05'],
    dueOn: '2025-03-10',
    latestOn: '2025-05-10',
    marks: [],
    why: 'too early to count: still counted from the startup',
    rule: SHEET,
  },
  {
    sheet: null,
    started: '2025-10-14',
    services: [],
    dueOn: '2026-10-14',
    latestOn: '2026-10-14',
    marks: [],
    why: 'no sheet: once a year and no grace assumed',
    rule: COMMON,
  },
];

/** Started up on 20 October 2025, six days after installation. Invented sheet: exchanger 120 months registered, 24 not; parts 60, 12; labour 24, 0; 30 days from installation; service 12 + 2 from the anniversary; transfer within 90 days. */
export type TermCase = {
  readonly today: string;
  readonly installed?: string | null;
  readonly submitted?: string;
  readonly confirmed?: string;
  readonly services?: readonly string[];
  readonly water?: false;
  readonly licensed?: false;
  readonly use?: 'commercial' | null;
  readonly otherUseMonths?: number;
  readonly transferDays?: null;
  readonly originalOwner?: true;
  readonly ownerChange?: { readonly on: string; readonly told?: string };
  readonly part: 'exchanger' | 'parts' | 'labour';
  readonly endsOn: string | null;
  readonly state: 'evidenced' | 'at-risk' | 'not-evidenced' | 'past-its-date';
  /** A reason that must be among those given. */
  readonly reason: string;
  readonly latestDay?: string;
  readonly why: string;
  readonly rule: string;
};

export const TERM_CASES: readonly TermCase[] = [
  {
    today: '2025-12-01',
    confirmed: '2025-11-03',
    part: 'exchanger',
    endsOn: '2035-10-14',
    state: 'evidenced',
    reason: 'registered',
    why: 'registered: ten years from installation on 14 October 2025',
    rule: EU_MONTHS,
  },
  {
    today: '2025-12-01',
    confirmed: '2025-11-03',
    part: 'parts',
    endsOn: '2030-10-14',
    state: 'evidenced',
    reason: 'registered',
    why: 'registered: five years',
    rule: EU_MONTHS,
  },
  {
    today: '2025-11-05',
    part: 'exchanger',
    endsOn: '2035-10-14',
    state: 'at-risk',
    reason: 'registration-open',
    latestDay: '2025-11-13',
    why: 'the window is still open: the longer term can be had until 13 November',
    rule: SHEET,
  },
  {
    today: '2025-11-13',
    part: 'exchanger',
    endsOn: '2035-10-14',
    state: 'at-risk',
    reason: 'registration-open',
    latestDay: '2025-11-13',
    why: 'on the last day itself it is still open',
    rule: EU_DAYS,
  },
  {
    today: '2025-11-14',
    part: 'exchanger',
    endsOn: '2027-10-14',
    state: 'evidenced',
    reason: 'registration-missed',
    why: 'not registered: the shorter term of two years stands',
    rule: SHEET,
  },
  {
    today: '2025-11-14',
    part: 'labour',
    endsOn: null,
    state: 'not-evidenced',
    reason: 'registration-missed',
    why: 'without registration the sheet states no labour term at all',
    rule: SHEET,
  },
  {
    today: '2025-11-20',
    submitted: '2025-11-13',
    part: 'exchanger',
    endsOn: '2035-10-14',
    state: 'at-risk',
    reason: 'registration-unconfirmed',
    why: 'handed in on the last day: in time, but not confirmed yet',
    rule: EU_DAYS,
  },
  {
    today: '2025-11-20',
    submitted: '2025-11-14',
    part: 'exchanger',
    endsOn: '2027-10-14',
    state: 'evidenced',
    reason: 'registration-late',
    why: 'handed in a day late and not confirmed: only the shorter term is shown',
    rule: SHEET,
  },
  {
    today: '2025-12-20',
    submitted: '2025-11-14',
    confirmed: '2025-12-02',
    part: 'exchanger',
    endsOn: '2035-10-14',
    state: 'evidenced',
    reason: 'registered',
    why: 'handed in late and confirmed all the same: the maker took it',
    rule: SHEET,
  },
  {
    today: '2026-06-01',
    installed: null,
    confirmed: '2025-11-03',
    part: 'exchanger',
    endsOn: null,
    state: 'not-evidenced',
    reason: 'registered',
    why: 'no day of installation, no start to count from',
    rule: SHEET,
  },
  {
    today: '2025-12-01',
    installed: '2024-02-29',
    part: 'parts',
    endsOn: '2025-02-28',
    state: 'past-its-date',
    reason: 'registration-missed',
    why: 'twelve months from a leap day ended on 28 February 2025',
    rule: EU_MONTHS,
  },
  {
    today: '2025-02-28',
    installed: '2024-02-29',
    part: 'parts',
    endsOn: '2025-02-28',
    state: 'evidenced',
    reason: 'registration-missed',
    why: 'the last day still belongs to the term',
    rule: EU_DAYS,
  },
  {
    today: '2025-03-01',
    installed: '2024-02-29',
    part: 'parts',
    endsOn: '2025-02-28',
    state: 'past-its-date',
    reason: 'registration-missed',
    why: 'the day after the last one',
    rule: EU_DAYS,
  },
  {
    today: '2027-02-01',
    confirmed: '2025-11-03',
    services: ['2026-10-20'],
    part: 'exchanger',
    endsOn: '2035-10-14',
    state: 'evidenced',
    reason: 'services-done',
    why: 'the first service was done six days into the grace',
    rule: SHEET,
  },
  {
    today: '2026-12-21',
    confirmed: '2025-11-03',
    part: 'exchanger',
    endsOn: '2035-10-14',
    state: 'not-evidenced',
    reason: 'service-missed',
    why: 'started up on 20 October 2025: twelve months and two of grace ended on 20 December',
    rule: SHEET,
  },
  {
    today: '2026-12-20',
    confirmed: '2025-11-03',
    part: 'exchanger',
    endsOn: '2035-10-14',
    state: 'at-risk',
    reason: 'service-open',
    latestDay: '2026-12-20',
    why: 'the last day of the grace',
    rule: SHEET,
  },
  {
    today: '2027-02-01',
    confirmed: '2025-11-03',
    services: ['2026-12-21'],
    part: 'exchanger',
    endsOn: '2035-10-14',
    state: 'not-evidenced',
    reason: 'service-late',
    why: 'serviced a day after the grace',
    rule: SHEET,
  },
  {
    today: '2025-12-01',
    confirmed: '2025-11-03',
    water: false,
    part: 'exchanger',
    endsOn: '2035-10-14',
    state: 'not-evidenced',
    reason: 'water-quality-missing',
    why: 'the sheet asks for the water and nothing was recorded',
    rule: SHEET,
  },
  {
    today: '2025-12-01',
    confirmed: '2025-11-03',
    licensed: false,
    part: 'exchanger',
    endsOn: '2035-10-14',
    state: 'not-evidenced',
    reason: 'installer-licence-missing',
    why: 'no licence on file valid on the day',
    rule: SHEET,
  },
  {
    today: '2025-12-01',
    confirmed: '2025-11-03',
    use: 'commercial',
    part: 'exchanger',
    endsOn: '2035-10-14',
    state: 'not-evidenced',
    reason: 'use-differs',
    why: 'home cover on a commercial building',
    rule: SHEET,
  },
  {
    today: '2025-12-01',
    confirmed: '2025-11-03',
    use: 'commercial',
    otherUseMonths: 12,
    part: 'exchanger',
    endsOn: '2026-10-14',
    state: 'evidenced',
    reason: 'use-differs',
    why: 'this sheet states twelve months for other use',
    rule: SHEET,
  },
  {
    today: '2025-12-01',
    confirmed: '2025-11-03',
    use: null,
    part: 'exchanger',
    endsOn: '2035-10-14',
    state: 'not-evidenced',
    reason: 'use-unknown',
    why: 'nobody said how the building is used',
    rule: SHEET,
  },
  {
    today: '2026-03-01',
    confirmed: '2025-11-03',
    ownerChange: { on: '2026-02-01' },
    part: 'exchanger',
    endsOn: '2035-10-14',
    state: 'at-risk',
    reason: 'transfer-open',
    latestDay: '2026-05-02',
    why: 'sold on 1 February: 28 February is day 27, 31 March 58, 30 April 88, 2 May 90',
    rule: EU_DAYS,
  },
  {
    today: '2026-05-02',
    confirmed: '2025-11-03',
    ownerChange: { on: '2026-02-01' },
    part: 'exchanger',
    endsOn: '2035-10-14',
    state: 'at-risk',
    reason: 'transfer-open',
    latestDay: '2026-05-02',
    why: 'the last day to tell the maker',
    rule: EU_DAYS,
  },
  {
    today: '2026-05-03',
    confirmed: '2025-11-03',
    ownerChange: { on: '2026-02-01' },
    part: 'exchanger',
    endsOn: '2035-10-14',
    state: 'not-evidenced',
    reason: 'transfer-missed',
    why: 'the transfer window is over and nobody told',
    rule: SHEET,
  },
  {
    today: '2026-06-01',
    confirmed: '2025-11-03',
    ownerChange: { on: '2026-02-01', told: '2026-05-02' },
    part: 'exchanger',
    endsOn: '2035-10-14',
    state: 'evidenced',
    reason: 'transfer-told',
    why: 'told on the last day',
    rule: EU_DAYS,
  },
  {
    today: '2026-06-01',
    confirmed: '2025-11-03',
    ownerChange: { on: '2026-02-01', told: '2026-05-03' },
    part: 'exchanger',
    endsOn: '2035-10-14',
    state: 'not-evidenced',
    reason: 'transfer-late',
    why: 'told a day late',
    rule: SHEET,
  },
  {
    today: '2026-06-01',
    confirmed: '2025-11-03',
    transferDays: null,
    originalOwner: true,
    ownerChange: { on: '2026-02-01' },
    part: 'exchanger',
    endsOn: '2035-10-14',
    state: 'not-evidenced',
    reason: 'owner-changed',
    why: 'this sheet’s terms are for the first owner alone',
    rule: SHEET,
  },
  {
    today: '2026-06-01',
    confirmed: '2025-11-03',
    transferDays: null,
    ownerChange: { on: '2026-02-01' },
    part: 'exchanger',
    endsOn: '2035-10-14',
    state: 'evidenced',
    reason: 'registered',
    why: 'this sheet says nothing of owners: the terms stay with the appliance',
    rule: SHEET,
  },
  {
    today: '2026-10-14',
    part: 'parts',
    endsOn: '2026-10-14',
    state: 'evidenced',
    reason: 'registration-missed',
    why: 'a term of twelve months ends before the first yearly service is due',
    rule: SHEET,
  },
];
