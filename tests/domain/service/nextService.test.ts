/** Agreements beside the maker's terms: days worked out by hand on a calendar, and what holds for any of them. */
import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { derivationSentence } from '../../../domain/coverage/derivation.ts';
import { explainService } from '../../../domain/service/explainService.ts';
import { nextService, type ServiceFacts } from '../../../domain/service/nextService.ts';
import type { ServiceAgreement } from '../../../domain/service/serviceAgreement.ts';
import { agreementsOverlap } from '../../../domain/service/serviceAgreement.ts';
import { GENERAL_SERVICE_RULE, type ServiceRule } from '../../../domain/service/serviceRule.ts';

/** Every year from startup, two months of grace. */
const MAKER: ServiceRule = {
  everyMonths: 12,
  graceMonths: 2,
  countedFrom: 'anniversary',
  anchor: 'started',
  earlyServiceCounts: true,
  source: 'maker-sheet',
};

type Case = {
  readonly why: string;
  /** `months from [to]` */
  readonly agreements: readonly (readonly [everyMonths: number, fromOn: string, toOn?: string])[];
  readonly rule?: ServiceRule;
  readonly started?: string | null;
  readonly services?: readonly string[];
  readonly dueOn: string | null;
  readonly latestOn: string | null;
  /** Who asks, the one that binds first. */
  readonly asks: readonly string[];
};

/** Startup on 20 Oct 2025 unless it says otherwise: the maker asks for 20 Oct 2026, at the latest 20 Dec 2026. */
const CASES: readonly Case[] = [
  {
    why: 'six months from 1 Jan is 1 Jul, before the maker’s day',
    agreements: [[6, '2026-01-01']],
    dueOn: '2026-07-01',
    latestOn: '2026-07-01',
    asks: ['agreement', 'maker-sheet'],
  },
  {
    why: 'two years from 1 Jan 2026 would be 1 Jan 2028: the maker’s terms are not lengthened',
    agreements: [[24, '2026-01-01']],
    dueOn: '2026-10-20',
    latestOn: '2026-12-20',
    asks: ['maker-sheet', 'agreement'],
  },
  {
    why: 'both at the latest on 20 Dec: the one that is due first stands first',
    agreements: [[12, '2025-12-20']],
    dueOn: '2026-10-20',
    latestOn: '2026-12-20',
    asks: ['maker-sheet', 'agreement'],
  },
  {
    why: 'agreed for 30 Nov, inside the maker’s grace: due as the maker says, latest as agreed',
    agreements: [[12, '2025-11-30']],
    dueOn: '2026-10-20',
    latestOn: '2026-11-30',
    asks: ['agreement', 'maker-sheet'],
  },
  {
    why: 'one month from 31 Jan: February has no 31st, so its last day',
    agreements: [[1, '2026-01-31']],
    dueOn: '2026-02-28',
    latestOn: '2026-02-28',
    asks: ['agreement', 'maker-sheet'],
  },
  {
    why: 'done on 28 Feb: the next month is counted from 31 Jan again, 31 Mar and not 28 Mar',
    agreements: [[1, '2026-01-31']],
    services: ['2026-02-28'],
    dueOn: '2026-03-31',
    latestOn: '2026-03-31',
    asks: ['agreement', 'maker-sheet'],
  },
  {
    why: 'a year from 29 Feb 2024 is 28 Feb 2025',
    agreements: [[12, '2024-02-29']],
    started: '2024-12-31',
    dueOn: '2025-02-28',
    latestOn: '2025-02-28',
    asks: ['agreement', 'maker-sheet'],
  },
  {
    why: 'four years on the leap day is there again',
    agreements: [[12, '2024-02-29']],
    started: '2027-03-01',
    services: ['2025-02-27', '2026-02-28', '2027-02-28'],
    dueOn: '2028-02-29',
    latestOn: '2028-02-29',
    asks: ['agreement', 'maker-sheet'],
  },
  {
    why: 'ended on 30 Jun: the service of 1 Jul is not owed by it any more',
    agreements: [[6, '2026-01-01', '2026-06-30']],
    dueOn: '2026-10-20',
    latestOn: '2026-12-20',
    asks: ['maker-sheet'],
  },
  {
    why: 'its last day is the due day itself: still owed',
    agreements: [[6, '2026-01-01', '2026-07-01']],
    dueOn: '2026-07-01',
    latestOn: '2026-07-01',
    asks: ['agreement', 'maker-sheet'],
  },
  {
    why: 'fell due before the end and was never done: it stays',
    agreements: [[6, '2025-01-01', '2025-12-31']],
    dueOn: '2025-07-01',
    latestOn: '2025-07-01',
    asks: ['agreement', 'maker-sheet'],
  },
  {
    why: 'done on 10 Nov 2025, nearest to 1 Jan 2026: the one after, 1 Jul 2026, lies past the end',
    agreements: [[6, '2025-01-01', '2025-12-31']],
    services: ['2025-11-10'],
    dueOn: '2026-10-20',
    latestOn: '2026-12-20',
    asks: ['maker-sheet'],
  },
  {
    why: 'a visit ten weeks after the start is nearer to the start than to the year’s end: it counts for nothing',
    agreements: [[12, '2025-12-01']],
    services: ['2026-02-10'],
    dueOn: '2026-10-20',
    latestOn: '2026-12-01',
    asks: ['agreement', 'maker-sheet'],
  },
  {
    why: 'one ended, the next begun the day after: each only for its own time',
    agreements: [
      [12, '2025-07-01', '2026-06-30'],
      [3, '2026-07-01'],
    ],
    dueOn: '2026-10-01',
    latestOn: '2026-10-01',
    asks: ['agreement', 'maker-sheet'],
  },
  {
    why: 'no maker asks for anything: the agreement’s two years stand, the general rule is only shown',
    agreements: [[24, '2025-10-20']],
    rule: GENERAL_SERVICE_RULE,
    dueOn: '2027-10-20',
    latestOn: '2027-10-20',
    asks: ['agreement', 'general-rule'],
  },
  {
    why: 'ended and nothing owed: the general rule counts again',
    agreements: [[24, '2025-10-20', '2026-01-31']],
    rule: GENERAL_SERVICE_RULE,
    dueOn: '2026-10-20',
    latestOn: '2026-10-20',
    asks: ['general-rule'],
  },
  {
    why: 'due by the general rule nine days after the agreement began: the agreement stands alone from its start',
    agreements: [[24, '2026-10-11']],
    rule: GENERAL_SERVICE_RULE,
    dueOn: '2028-10-11',
    latestOn: '2028-10-11',
    asks: ['agreement', 'general-rule'],
  },
  {
    why: 'an agreement that starts next year does not take this year’s service away',
    agreements: [[24, '2027-01-01']],
    rule: GENERAL_SERVICE_RULE,
    dueOn: '2026-10-20',
    latestOn: '2026-10-20',
    asks: ['general-rule', 'agreement'],
  },
  {
    why: 'this year’s service done: what comes next by the general rule falls into the agreement, which stands alone',
    agreements: [[24, '2027-01-01']],
    rule: GENERAL_SERVICE_RULE,
    services: ['2026-10-19'],
    dueOn: '2029-01-01',
    latestOn: '2029-01-01',
    asks: ['agreement', 'general-rule'],
  },
  {
    why: 'fell due by the general rule before the agreement was made and was never done: it stays',
    agreements: [[6, '2026-10-21']],
    rule: GENERAL_SERVICE_RULE,
    dueOn: '2026-10-20',
    latestOn: '2026-10-20',
    asks: ['general-rule', 'agreement'],
  },
  {
    why: 'no date of the appliance is known, but somebody agreed on something',
    agreements: [[12, '2026-02-01']],
    started: null,
    dueOn: '2027-02-01',
    latestOn: '2027-02-01',
    asks: ['agreement'],
  },
  { why: 'no date is known and nobody agreed', agreements: [], started: null, dueOn: null, latestOn: null, asks: [] },
];

describe('nextService: who asks for it, and by when', () => {
  it.each(CASES)('due $dueOn, latest $latestOn: $why', (one) => {
    const next = nextService(factsOf(one));
    expect([next?.dueOn ?? null, next?.latestOn ?? null]).toEqual([one.dueOn, one.latestOn]);
    expect(next?.demands.map(({ sureness }) => sureness) ?? []).toEqual(one.asks);
    expect(next?.sureness).toBe(one.asks[0]);
  });

  it('says in a sentence each how both days came about', () => {
    const next = nextService(factsOf({ agreements: [[6, '2026-01-31']] }));
    const demands = next === null ? [] : explainService(next).demands;
    expect(demands.map(({ latest }) => derivationSentence(latest))).toEqual([
      '6 months from the start of the service agreement on 31 Jan 2026, the same day of the month: Fri 31 Jul 2026.',
      '12 months and 2 months of grace from startup on 20 Oct 2025, the same day of the month: Sun 20 Dec 2026.',
    ]);
    expect(demands.map(({ agreementNumber }) => agreementNumber)).toEqual(['A-0', null]);
  });

  it('never lengthens what the maker demands, counts as another date library does, whatever the order', () => {
    fc.assert(
      fc.property(fc.array(anAgreement, { maxLength: 4 }), fc.array(aDay, { maxLength: 5 }), (agreed, services) => {
        const agreements = agreed.map((one, index) => ({ ...one, agreementId: String(index) }));
        const facts = { ...factsOf({ agreements: [], services }), agreements };
        const alone = nextService({ ...facts, agreements: [] });
        const next = nextService(facts);
        if (alone === null || next === null) throw new Error('the startup is known');
        expect(next.latestOn <= alone.latestOn).toBe(true);
        expect(next.dueOn <= next.latestOn && next.windowFrom <= next.dueOn).toBe(true);
        expect(nextService({ ...facts, agreements: agreements.toReversed() })?.latestOn).toBe(next.latestOn);
        for (const { agreement, period } of next.demands) {
          if (agreement === null) continue;
          const from = DateTime.fromISO(agreement.fromOn, { zone: 'utc' });
          expect(period.dueOn).toBe(from.plus({ months: period.nth * agreement.everyMonths }).toISODate());
          expect(agreement.toOn === null || period.dueOn <= agreement.toOn).toBe(true);
        }
      }),
      { numRuns: 2000 },
    );
  });
});

describe('agreementsOverlap', () => {
  it.each([
    ['2026-01-01', '2026-06-30', '2026-07-01', null, false],
    ['2026-01-01', '2026-07-01', '2026-07-01', null, true],
    ['2026-01-01', null, '2027-01-01', '2027-12-31', true],
    ['2026-01-01', null, '2024-01-01', '2025-12-31', false],
  ])('%s–%s and %s–%s: %s', (aFrom, aTo, bFrom, bTo, expected) => {
    const [a, b] = [
      { fromOn: aFrom, toOn: aTo },
      { fromOn: bFrom, toOn: bTo },
    ];
    expect(agreementsOverlap(a, b)).toBe(expected);
    expect(agreementsOverlap(b, a)).toBe(expected);
  });
});

const aDay = fc
  .integer({ min: 0, max: 4000 })
  .map((days) => DateTime.fromISO('2024-01-01', { zone: 'utc' }).plus({ days }).toISODate() ?? '');

const anAgreement = fc.record({
  number: fc.constant(null),
  everyMonths: fc.integer({ min: 1, max: 60 }),
  fromOn: aDay,
  toOn: fc.option(aDay, { nil: null }),
});

function factsOf(one: Pick<Case, 'agreements' | 'rule' | 'started' | 'services'>): ServiceFacts {
  const started = one.started === undefined ? '2025-10-20' : one.started;
  return {
    serviceRule: one.rule ?? MAKER,
    dates: started === null ? [] : [{ kind: 'started', on: started, precision: 'day' }],
    servicesOn: one.services ?? [],
    agreements: one.agreements.map(
      ([everyMonths, fromOn, toOn], index): ServiceAgreement => ({
        agreementId: String(index),
        number: `A-${index}`,
        everyMonths,
        fromOn,
        toOn: toOn ?? null,
      }),
    ),
  };
}
