import { describe, expect, it } from 'vitest';
import { applianceCover } from '../../../domain/coverage/applianceCover.ts';
import type { CoverFacts } from '../../../domain/coverage/coverFacts.ts';
import type { KnownDate } from '../../../domain/coverage/knownDate.ts';
import { daysFromTo, lastDayOf, weekdayOf } from '../../../domain/coverage/period.ts';
import { registrationDue } from '../../../domain/coverage/registrationDeadline.ts';
import type { SheetCover } from '../../../domain/procedure/modelSheet.ts';
import { serviceAnchorOf, serviceRuleOf } from '../../../domain/service/serviceRule.ts';
import { serviceSchedule } from '../../../domain/service/serviceSchedule.ts';
import { dayIn } from '../../../electron/operations/today.ts';
import {
  PERIOD_CASES,
  REGISTRATION_CASES,
  SERVICE_CASES,
  TERM_CASES,
  type TermCase,
  ZONE_CASES,
} from './coverCases.ts';

const MAKER = { kind: 'maker', source: 'an invented sheet' } as const;
const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

describe('cover cases worked out by hand', () => {
  it('are at least sixty, each with its reason and its rule', () => {
    const all = [...PERIOD_CASES, ...REGISTRATION_CASES, ...ZONE_CASES, ...SERVICE_CASES, ...TERM_CASES];
    expect(all.length).toBeGreaterThanOrEqual(60);
    for (const one of all) {
      expect(one.why.length).toBeGreaterThan(10);
      expect(one.rule.length).toBeGreaterThan(10);
    }
  });

  it.each(PERIOD_CASES)('$from + $period ends on $weekday $endsOn: $why ($rule)', (one) => {
    expect(lastDayOf(one.from, one.period)).toBe(one.endsOn);
    expect(WEEKDAYS[weekdayOf(one.endsOn) - 1]).toBe(one.weekday);
  });

  it.each(REGISTRATION_CASES)('registered by $dueOn: $why ($rule)', (one) => {
    const due = registrationDue({
      cover:
        one.sheet === null
          ? null
          : invented({ registration: { window: one.sheet.window, countedFrom: one.sheet.from, basis: MAKER } }),
      dates: one.dates.map(([kind, on, precision = 'day']) => ({ kind, on, precision })),
    });
    expect(due?.dueOn ?? null).toBe(one.dueOn);
    expect(due?.countedFrom).toBe(one.from);
    expect(due?.isAssumed).toBe(one.isAssumed);
  });

  it.each(ZONE_CASES)('$at is $today in $zone, $daysLeft left: $why ($rule)', (one) => {
    expect(dayIn(one.zone, one.at)).toBe(one.today);
    expect(daysFromTo(one.today, '2025-11-13')).toBe(one.daysLeft);
  });

  it.each(SERVICE_CASES)('service due $dueOn, latest $latestOn: $why ($rule)', (one) => {
    const rule = serviceRuleOf(
      one.sheet === null
        ? null
        : {
            maker: 'An invented maker',
            cover: invented({
              conditions: {
                ...invented().conditions,
                serviceEveryMonths: one.sheet.every,
                graceMonths: one.sheet.grace,
                serviceCountedFrom: one.sheet.from,
                earlyServiceCounts: one.sheet.earlyCounts,
              },
            }),
          },
    );
    const anchor = serviceAnchorOf(rule, [{ kind: 'started', on: one.started, precision: 'day' }], one.services);
    if (anchor === null) throw new Error('the startup is known');
    const { past, next } = serviceSchedule(rule, anchor, one.services);
    expect(next).toMatchObject({ dueOn: one.dueOn, latestOn: one.latestOn, doneOn: null });
    expect(
      past.map(({ doneOn, latestOn }) => (doneOn === null ? 'missed' : doneOn > latestOn ? 'late' : 'in time')),
    ).toEqual(one.marks);
  });

  it.each(TERM_CASES)('$part on $today: $state until $endsOn: $why ($rule)', (one) => {
    const term = applianceCover(factsOf(one)).terms.find(({ part }) => part === one.part);
    expect(term).toMatchObject({ endsOn: one.endsOn, state: one.state });
    expect(term?.reasons.map(({ code }) => code)).toContain(one.reason);
    if (one.latestDay !== undefined) expect(term?.latestDay?.on).toBe(one.latestDay);
  });
});

function invented(changes: Partial<SheetCover> = {}): SheetCover {
  return {
    terms: [],
    registration: { window: { days: 30 }, countedFrom: 'installed', basis: MAKER },
    conditions: {
      serviceEveryMonths: 12,
      graceMonths: 2,
      serviceCountedFrom: 'anniversary',
      waterQualityRecorded: true,
      licensedInstaller: true,
      originalOwner: false,
      use: 'home',
      transferWindowDays: 90,
    },
    ...changes,
  };
}

function factsOf(one: TermCase): CoverFacts {
  const length = (part: TermCase['part'], registeredMonths: number, unregisteredMonths: number) => ({
    part,
    registeredMonths,
    unregisteredMonths,
    countedFrom: 'installed' as const,
    ...(one.otherUseMonths === undefined ? {} : { otherUseMonths: one.otherUseMonths }),
  });
  const basis = invented();
  const cover: SheetCover = {
    ...basis,
    terms: [length('exchanger', 120, 24), length('parts', 60, 12), length('labour', 24, 0)],
    conditions: {
      ...basis.conditions,
      originalOwner: one.originalOwner ?? false,
      transferWindowDays: one.transferDays === null ? null : 90,
    },
  };
  const installed = one.installed === undefined ? '2025-10-14' : one.installed;
  const started = one.installed === undefined || one.installed === null ? '2025-10-20' : one.installed;
  const dates: KnownDate[] = [{ kind: 'started', on: started, precision: 'day' }];
  if (installed !== null) dates.push({ kind: 'installed', on: installed, precision: 'day' });
  return {
    today: one.today,
    cover,
    serviceRule: serviceRuleOf({ maker: 'An invented maker', cover }),
    dates,
    registration: { submittedOn: one.submitted ?? null, confirmedOn: one.confirmed ?? null, number: null },
    servicesOn: one.services ?? [],
    agreements: [],
    evidence: {
      isWaterQualityRecorded: one.water ?? true,
      isInstallerLicensed: one.licensed ?? true,
      use: one.use === undefined ? 'home' : one.use,
    },
    ownerChanges:
      one.ownerChange === undefined ? [] : [{ on: one.ownerChange.on, toldMakerOn: one.ownerChange.told ?? null }],
    place: { country: 'CA', region: null },
  };
}
