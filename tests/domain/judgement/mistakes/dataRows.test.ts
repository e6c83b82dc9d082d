/** Entry mistakes outside the readings of one run, one by one; `tests/catchRate/mistakes/` injects the same. */
import { describe, expect, it } from 'vitest';
import { clockDifferences } from '../../../../domain/judgement/mistakes/clockDifferences.ts';
import { copiedReadings } from '../../../../domain/judgement/mistakes/copiedReadings.ts';
import { dateKindsConfused } from '../../../../domain/judgement/mistakes/dateKindsConfused.ts';
import { dateOrderProblems, type JobDate } from '../../../../domain/judgement/mistakes/dateOrderProblems.ts';
import { feetAsMetres } from '../../../../domain/judgement/mistakes/feetAsMetres.ts';
import { lookAlikeSerials } from '../../../../domain/judgement/mistakes/lookAlikeSerials.ts';
import { ownerIsBuilder } from '../../../../domain/judgement/mistakes/ownerIsBuilder.ts';
import { readDayText } from '../../../../domain/judgement/mistakes/readDayText.ts';
import { serialElsewhere } from '../../../../domain/judgement/mistakes/serialElsewhere.ts';
import { type PartyEntry, similarParties } from '../../../../domain/judgement/mistakes/similarParties.ts';

describe('copied across jobs', () => {
  const job = (jobId: string, co2: number, co: number, o2 = 5.1, flue = 58.4) => ({
    jobId,
    values: { 'co2DryVolPct@high': co2, 'coPpm@high': co, 'o2DryVolPct@high': o2, 'flueGasC@high': flue },
  });

  it('finds the same readings in two jobs', () => {
    const problems = copiedReadings([job('a', 9.2, 18), job('b', 9.2, 18)]);
    expect(problems).toEqual([{ code: 'copied-readings', how: 'same-as-another-job', jobIds: ['a', 'b'], same: 4 }]);
  });

  it('finds a quantity without any spread, and readings exactly on target', () => {
    const jobs = ['a', 'b', 'c', 'd'].map((id, index) => job(id, 9.2, 18 + index, 5 + index / 10, 58 + index));
    expect(copiedReadings(jobs)).toEqual([
      { code: 'copied-readings', how: 'no-spread', jobIds: ['a', 'b', 'c', 'd'], key: 'co2DryVolPct@high' },
    ]);
    expect(copiedReadings([job('a', 9.2, 18)], { 'co2DryVolPct@high': 9.2, 'coPpm@high': 18 })).toMatchObject([
      { how: 'exactly-on-target' },
    ]);
  });

  it('takes real ones', () => {
    expect(
      copiedReadings([job('a', 9.2, 18), job('b', 9.2, 22, 5), job('c', 9.0, 18, 5.2, 57.9), job('d', 9.3, 31)]),
    ).toEqual([]);
  });
});

describe('look-alikes in a serial', () => {
  it('SN5O1B… may be SN5018…', () => {
    expect(lookAlikeSerials('SN5O1B77', (candidate) => /^[A-Z]{2}\d{6}$/.test(candidate))).toContain('SN501877');
  });

  it('has none for a serial with nothing to be mistaken', () => {
    expect(lookAlikeSerials('XY777', () => true)).toEqual([]);
  });
});

describe('one serial twice', () => {
  const one = { applianceId: 'left', siteId: 'site-1', maker: 'Invented Works', serial: 'AB-5071 000' };

  it('on a pair of one site, at another site, and one that only looks alike', () => {
    const known = [
      { ...one, applianceId: 'right', serial: 'AB5071000' },
      { ...one, applianceId: 'far', siteId: 'site-2', serial: 'ab5071000' },
      { ...one, applianceId: 'alike', siteId: 'site-2', serial: 'A85071000' },
      { ...one, applianceId: 'other-maker', maker: 'Another Works' },
    ];
    expect(
      serialElsewhere(one, known).map((problem) => [problem.otherApplianceId, problem.code, problem.isOnSameSite]),
    ).toEqual([
      ['right', 'serial-elsewhere', true],
      ['far', 'serial-elsewhere', false],
      ['alike', 'serial-confusable', false],
    ]);
  });

  it('is not troubled by the appliance itself', () => {
    expect(serialElsewhere(one, [one])).toEqual([]);
  });
});

describe('day and month', () => {
  it('asks about 04/07/2025', () => {
    const day = readDayText('04/07/2025');
    expect(day).toEqual({
      ok: false,
      error: { code: 'day-month-ambiguous', readings: ['2025-07-04', '2025-04-07'] },
    });
  });

  it.each([
    ['2025-07-04', '2025-07-04'],
    ['04.07.2025', '2025-07-04'],
    ['25/07/2025', '2025-07-25'],
    ['07/25/2025', '2025-07-25'],
    ['07/07/2025', '2025-07-07'],
  ])('reads %s as %s', (text, iso) => {
    expect(readDayText(text)).toEqual({ ok: true, value: iso });
  });

  it.each(['31.02.2025', '13/13/2025', '2025-02-30', 'yesterday', '1/2/25'])('refuses %s', (text) => {
    expect(readDayText(text).ok).toBe(false);
  });

  it('offers the exchange that puts the dates in order', () => {
    const dates = { made: '2025-05-10', installed: '2025-04-07', started: '2025-07-08' };
    expect(dateOrderProblems(toTheDay(dates), '2025-08-01')[0]).toMatchObject({
      code: 'day-month-swapped',
      earlier: 'made',
      later: 'installed',
      meant: expect.arrayContaining([{ kind: 'installed', on: '2025-07-04' }]),
    });
  });
});

describe('wrong year', () => {
  it('2024 written in January 2025', () => {
    const dates = { made: '2024-10-15', installed: '2024-01-10', started: '2025-01-11' };
    expect(dateOrderProblems(toTheDay(dates), '2025-01-12')).toMatchObject([
      { code: 'wrong-year', meant: expect.arrayContaining([{ kind: 'installed', on: '2025-01-10' }]) },
    ]);
  });

  it('more than a year between making and starting, and a day that is still to come', () => {
    expect(dateOrderProblems(toTheDay({ made: '2023-01-10', started: '2025-01-11' }), '2025-01-12')).toMatchObject([
      { code: 'wrong-year' },
    ]);
    expect(dateOrderProblems(toTheDay({ started: '2026-01-11' }), '2025-01-12')).toMatchObject([{ later: 'today' }]);
  });

  it('compares a month or a year as far as it is known', () => {
    const dates = [
      { kind: 'made', on: '2025-03-01', precision: 'year' },
      { kind: 'installed', on: '2025-01-20', precision: 'day' },
      { kind: 'started', on: '2025-01-01', precision: 'month' },
    ] as const;
    expect(dateOrderProblems(dates, '2025-01-20')).toEqual([]);
  });

  it('takes dates in order', () => {
    expect(
      dateOrderProblems(
        toTheDay({
          made: '2025-05-10',
          sold: '2025-06-01',
          installed: '2025-07-04',
          started: '2025-07-08',
          registered: '2025-07-09',
        }),
        '2025-08-01',
      ),
    ).toEqual([]);
  });
});

describe('clocks that differ', () => {
  it('a camera two hours ahead is a time zone, one nine minutes behind a clock', () => {
    const at = '2026-10-06T08:00:00Z';
    expect(
      clockDifferences([
        { clock: 'laptop', at },
        { clock: 'camera', at: '2026-10-06T10:01:00Z' },
        { clock: 'analyser', at: '2026-10-06T07:51:00Z' },
      ]),
    ).toEqual([
      { code: 'clock-differs', clock: 'camera', offsetS: 7260, isTimeZone: true },
      { code: 'clock-differs', clock: 'analyser', offsetS: -540, isTimeZone: false },
    ]);
  });

  it('takes two minutes', () => {
    const at = '2026-10-06T08:00:00Z';
    expect(
      clockDifferences([
        { clock: 'laptop', at },
        { clock: 'camera', at: '2026-10-06T08:02:00Z' },
      ]),
    ).toEqual([]);
    expect(clockDifferences([{ clock: 'camera', at }])).toEqual([]);
  });
});

describe('installed, started and moved in', () => {
  const day = (kind: 'installed' | 'started' | 'occupied', on: string) => ({ kind, on, precision: 'day' as const });

  it('shows the last day by each date, and asks for the one the rule names', () => {
    const dates = [day('installed', '2026-09-01'), day('started', '2026-09-15'), day('occupied', '2026-10-01')];
    const cover = {
      terms: [],
      registration: {
        window: { days: 30 },
        countedFrom: 'title-transfer' as const,
        basis: { kind: 'maker' as const, source: 'x' },
      },
      conditions: {
        serviceEveryMonths: 12,
        graceMonths: 1,
        serviceCountedFrom: 'anniversary' as const,
        waterQualityRecorded: false,
        licensedInstaller: true,
        originalOwner: false,
        use: 'any' as const,
        transferWindowDays: null,
      },
    };
    const problems = dateKindsConfused({ cover, dates, isNewBuild: true, today: '2026-10-05' });
    expect(problems).toMatchObject([
      {
        why: 'rule-date-missing',
        kinds: ['title-transfer'],
        lastDays: [
          { kind: 'installed', dueOn: '2026-10-01' },
          { kind: 'started', dueOn: '2026-10-15' },
          { kind: 'occupied', dueOn: '2026-10-31' },
        ],
      },
    ]);
  });

  it('asks when the boiler was started before it was installed, or lived with before it was in', () => {
    const why = (...dates: ReturnType<typeof day>[]) =>
      dateKindsConfused({ cover: null, dates, isNewBuild: true, today: '2026-10-05' }).map((problem) => problem.why);
    expect(why(day('installed', '2026-10-01'), day('started', '2026-09-01'))).toEqual(['started-before-installed']);
    expect(why(day('installed', '2026-10-01'), day('occupied', '2026-09-01'))).toEqual(['lived-in-before-installed']);
    expect(why(day('installed', '2026-09-01'), day('started', '2026-09-01'), day('occupied', '2026-10-01'))).toEqual(
      [],
    );
  });
});

describe('feet and metres', () => {
  it('1600 m typed as feet among neighbours at 1600 m', () => {
    const problem = feetAsMetres({ altitudeM: 1600 * 0.3048, neighbourAltitudesM: [1580, 1610, 1650] });
    expect(problem).toMatchObject({ code: 'feet-as-metres', meant: 'metres' });
    expect(problem?.meantM).toBeCloseTo(1600, 6);
  });

  it('9000 feet stored as metres', () => {
    expect(feetAsMetres({ altitudeM: 9000, neighbourAltitudesM: [2700, 2800] })).toMatchObject({ meant: 'feet' });
  });

  it('takes hills, flat land and a first job in a town', () => {
    expect(feetAsMetres({ altitudeM: 520, neighbourAltitudesM: [430, 610] })).toBeNull();
    expect(feetAsMetres({ altitudeM: 12, neighbourAltitudesM: [40] })).toBeNull();
    expect(feetAsMetres({ altitudeM: 1600, neighbourAltitudesM: [] })).toBeNull();
  });
});

describe('one customer twice', () => {
  const party: PartyEntry = {
    name: 'Mr. Peter Example',
    phones: ['+44 20 7946 0018'],
    street: 'Long Street',
    houseNumber: '12a',
    postcode: 'ZZ1 1AA',
  };

  it.each([
    [
      '"St." for "Street"',
      { phones: [], street: 'Long St.', houseNumber: '12 A', postcode: 'zz11aa' },
      ['same-name', 'same-address'],
    ],
    [
      'another way to write the phone',
      { name: 'P. Example', phones: ['020 7946 0018'], houseNumber: '' },
      ['same-phone'],
    ],
    [
      'name the other way round',
      { name: 'Example, Peter', phones: [], street: 'Lnog Street' },
      ['same-name', 'same-address'],
    ],
  ])('%s', (_, change, because) => {
    expect(similarParties(party, { ...party, ...change })?.because).toEqual(because);
  });

  it('does not take a name alone, nor a neighbour', () => {
    expect(similarParties(party, { ...party, phones: [], street: 'Short Lane', houseNumber: '3' })).toBeNull();
    expect(similarParties(party, { ...party, name: 'Ann Other', phones: [], houseNumber: '14' })).toBeNull();
  });
});

describe('the builder as owner', () => {
  const house = {
    buildingType: 'new-build',
    ownerId: 'b',
    builderId: 'b',
    occupantId: null,
    titleTransferOn: null,
  } as const;

  it('asks for the occupant and the transfer of title in a new house', () => {
    expect(ownerIsBuilder(house)?.askFor).toEqual(['occupant', 'title-transfer']);
    expect(ownerIsBuilder({ ...house, occupantId: 'o', titleTransferOn: '2026-05-01' })?.askFor).toEqual(['owner']);
  });

  it('takes an owner of a new house, and a builder who owns his home', () => {
    expect(ownerIsBuilder({ ...house, ownerId: 'o' })).toBeNull();
    expect(ownerIsBuilder({ ...house, buildingType: 'home' })).toBeNull();
  });
});

function toTheDay(dates: Readonly<Record<string, string>>): readonly JobDate<string>[] {
  return Object.entries(dates).map(([kind, on]) => ({ kind, on, precision: 'day' }));
}
