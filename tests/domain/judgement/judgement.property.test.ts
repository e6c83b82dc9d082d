/** What must hold of the judgement whatever was recorded and whatever the sheet says. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../domain/judgement/finding.ts';
import { judgeReading } from '../../../domain/judgement/judgeReading.ts';
import { isAbout, judgeRun } from '../../../domain/judgement/judgeRun.ts';
import { regionOf } from '../../../domain/judgement/regions.ts';
import { ceilingsFor } from '../../../domain/judgement/safetyCeilings.ts';
import type { ModelSheet } from '../../../domain/procedure/modelSheet.ts';
import type { RunRecord } from '../../../domain/procedure/runRecord.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import { judgementSheet } from '../../support/judgementSheet.ts';
import { recordArbitrary } from '../../support/recordArbitrary.ts';
import { ANALYSER, cleanRecord, reading, withValue } from '../../support/recordBuilder.ts';

const sheet = judgementSheet();
const runs = { numRuns: 120 };
const maker = { kind: 'maker', source: 'x' };

/** Sheets as loose, as silent or as odd as the schema allows. */
const looseSheet: fc.Arbitrary<ModelSheet> = fc
  .record({
    limits: fc.array(
      fc.record({
        quantity: fc.constantFrom(
          'coPpm',
          'coAirFreePpm',
          'coCo2Ratio',
          'roomCoPpm',
          'mixedOutletC',
          'flueGasC',
          'systemPressureBarG',
          'intakeO2VolPct',
        ),
        point: fc.constantFrom(null, 'high', 'hot'),
        max: fc.double({ min: 1, max: 1e6, noNaN: true }),
        severity: fc.constantFrom('outside', 'stop'),
        blocks: fc.subarray(['firing', 'leaving', 'registration']),
        edge: fc.double({ min: 0, max: 100, noNaN: true }),
        basis: fc.constant(maker),
      }),
      { maxLength: 8 },
    ),
    settleS: fc.integer({ min: 0, max: 3600 }),
    minSamples: fc.integer({ min: 1, max: 10 }),
    hasFactoryDefaults: fc.boolean(),
    lapseHours: fc.double({ min: 0.1, max: 9999, noNaN: true }),
  })
  .map(({ limits, settleS, minSamples, hasFactoryDefaults, lapseHours }) =>
    judgementSheet({
      // Of the intake air the least O2 is limited, of everything else the most.
      limits: limits.map(({ max, ...limit }) =>
        limit.quantity === 'intakeO2VolPct' ? { ...limit, min: Math.min(max, 19) } : { ...limit, max },
      ),
      relations: [],
      firingPoints: [
        { key: 'high', label: 'High', settleS },
        { key: 'low', label: 'Low', settleS },
      ],
      steady: { ...sheet.steady, minSamples },
      factoryDefaults: hasFactoryDefaults ? sheet.factoryDefaults : [],
      lapseHours: { tightness: lapseHours, roomCo: lapseHours, analyserZero: lapseHours, pressure: lapseHours },
    }),
  );

const record = recordArbitrary(sheet);

function numbersIn(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value];
  if (value !== null && typeof value === 'object') return Object.values(value).flatMap(numbersIn);
  return [];
}

const rank = ['within', 'no-limit-on-sheet', 'near-the-edge', 'cannot-tell-apart', 'cannot-judge', 'outside', 'stop'];
const stops = (findings: readonly Finding[]) => findings.filter(({ verdict }) => verdict === 'stop');

describe('judging', () => {
  it('never throws and never gives a number that is none', async () => {
    await fc.assert(
      fc.property(record, fc.option(looseSheet), (one, loose) => {
        const findings = judgeRun({ record: one, sheet: loose ?? sheet, reopenedAt: one.startedAt });
        for (const finding of findings) {
          expect(rank).toContain(finding.verdict);
          expect(numbersIn(finding).every(Number.isFinite)).toBe(true);
          if (finding.verdict === 'stop') expect(finding.makeSafe.length).toBeGreaterThan(0);
          if (finding.verdict === 'cannot-judge') expect(finding.missing.length).toBeGreaterThan(0);
          if (!finding.proof.proven) expect(finding.proof.because.length).toBeGreaterThan(0);
        }
      }),
      runs,
    );
  });

  it('says the same whenever it is asked, and whatever the order of the readings', async () => {
    await fc.assert(
      fc.property(record, fc.integer(), (one, seed) => {
        const shuffled: RunRecord = {
          ...one,
          readings: shuffle(one.readings, seed),
          answers: shuffle(one.answers, seed),
        };
        const findings = judgeRun({ record: one, sheet });
        expect(judgeRun({ record: one, sheet })).toEqual(findings);
        expect(judgeRun({ record: shuffled, sheet })).toEqual(findings);
      }),
      runs,
    );
  });

  it('changes nothing it is given', async () => {
    await fc.assert(
      fc.property(record, (one) => {
        const before = JSON.stringify(one);
        judgeRun({ record: one, sheet });
        expect(JSON.stringify(one)).toBe(before);
      }),
      { numRuns: 50 },
    );
  });

  it('judges each reading of a whole run exactly as the run will', () => {
    const extras = (
      ['displayOutdoorC', 'outdoorC', 'manifoldSupplyC', 'systemFlowLPerMin', 'typedGasRateM3PerH'] as const
    ).map((quantity, index) =>
      reading({ quantity, value: 10 + 7 * index, itemKey: quantity, stepKey: 'leaving', minutes: 79 }),
    );
    const whole = { ...cleanRecord(), readings: [...cleanRecord().readings, ...extras] };
    const bad = withValue(withValue(whole, 'o2DryVolPct', 'high', 9), 'co2DryVolPct', 'high', 5);
    for (const one of [whole, bad]) {
      const findings = judgeRun({ record: one, sheet });
      for (const live of one.readings) {
        expect(judgeReading({ record: one, sheet, reading: live })).toEqual(
          findings.filter((finding) => isAbout(finding, live.readingId)),
        );
      }
    }
  });

  it('judges a reading as typed exactly as the run will', async () => {
    await fc.assert(
      fc.property(record, fc.nat(), (one, index) => {
        const live = one.readings[index % Math.max(1, one.readings.length)];
        if (live === undefined) return;
        const whole = judgeRun({ record: one, sheet });
        const findings = judgeReading({ record: one, sheet, reading: live });
        expect(findings).toEqual(whole.filter((finding) => isAbout(finding, live.readingId)));
      }),
      { numRuns: 100 },
    );
  });
});

describe('safety ceilings', () => {
  it('can’t be loosened, silenced or switched off by any sheet', async () => {
    const quantities = fc.constantFrom('roomCoPpm', 'mixedOutletC', 'coPpm', 'intakeO2VolPct', 'systemPressureBarG');
    await fc.assert(
      fc.property(looseSheet, quantities, fc.double({ min: 0, max: 1, noNaN: true }), (loose, quantity, share) => {
        const { record: bad, subject } = beyondCeiling(quantity, share);
        for (const jurisdiction of ['DE', 'US', 'GB', 'nowhere']) {
          const findings = judgeRun({ record: bad, sheet: loose, jurisdiction });
          expect(stops(findings).map((finding) => finding.subject)).toContain(subject);
          // Nor does anything else on the same number say that it is fine.
          const direct = new Set(ceilingsFor(regionOf(jurisdiction)).map((ceiling) => ceiling.quantity));
          for (const finding of findings.filter(
            (one) => one.basis.limit?.quantity === quantity && direct.has(quantity),
          )) {
            if (finding.subject.startsWith('limit:')) expect(['outside', 'stop']).toContain(finding.verdict);
          }
        }
      }),
      runs,
    );
  });

  it('uncertainty never turns a stop into something milder', async () => {
    await fc.assert(
      fc.property(
        record,
        fc.double({ min: 0, max: 50, noNaN: true }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        (one, abs, relPct) => {
          const worse = Object.fromEntries(
            [
              'coPpm',
              'o2DryVolPct',
              'co2DryVolPct',
              'roomCoPpm',
              'mixedOutletC',
              'flueGasC',
              'systemPressureBarG',
              'intakeO2VolPct',
              'coAirFreePpm',
            ].map((quantity) => [quantity, { abs, relPct }] as const),
          );
          const exact = { ...one, instruments: one.instruments.map((each) => ({ ...each, accuracy: {} })) };
          const unsure = { ...one, instruments: one.instruments.map((each) => ({ ...each, accuracy: worse })) };
          const before = stops(judgeRun({ record: exact, sheet })).map(stopKey);
          const after = new Set(stops(judgeRun({ record: unsure, sheet })).map(stopKey));
          for (const key of before) expect(after).toContain(key);
        },
      ),
      runs,
    );
  });

  it('a higher CO never gets a milder verdict', async () => {
    await fc.assert(
      fc.property(fc.integer({ min: 0, max: 3000 }), fc.integer({ min: 0, max: 900 }), (co, more) => {
        const verdictAt = (ppm: number) => {
          const findings = judgeRun({ record: withValue(cleanRecord(), 'coPpm', 'high', ppm), sheet });
          return Math.max(
            ...findings
              .filter(({ subject }) => subject === 'ceiling:flue-co-air-free@high')
              .map((one) => rank.indexOf(one.verdict)),
          );
        };
        expect(verdictAt(co + more)).toBeGreaterThanOrEqual(verdictAt(co));
      }),
      runs,
    );
  });
});

/** A limit moves with its own uncertainty in the wording; subject and reading stay. */
function stopKey({ subject, readingId }: Finding): string {
  return `${subject}|${readingId}`;
}

function beyondCeiling(quantity: QuantityKey, share: number): { readonly record: RunRecord; readonly subject: string } {
  switch (quantity) {
    case 'roomCoPpm':
      return { record: withValue(cleanRecord(), quantity, null, 36 + share * 1900), subject: 'ceiling:room-co' };
    case 'mixedOutletC':
      return {
        record: withValue(cleanRecord(), quantity, null, 55.1 + share * 40),
        subject: 'ceiling:tap-water-scald',
      };
    case 'systemPressureBarG':
      return {
        record: withValue(cleanRecord(), quantity, 'hot', 2.81 + share * 5),
        subject: 'ceiling:relief-headroom@hot',
      };
    case 'intakeO2VolPct': {
      const intake = reading({
        quantity,
        value: 19.9 - share * 10,
        itemKey: 'intake',
        stepKey: 'combustion',
        minutes: 52,
        instrumentId: ANALYSER.instrumentId,
      });
      return {
        record: { ...cleanRecord(), readings: [...cleanRecord().readings, intake] },
        subject: 'ceiling:intake-air',
      };
    }
    default:
      // 307 ppm at 4.9 % O2 are 401 ppm air-free.
      return {
        record: withValue(cleanRecord(), 'coPpm', 'high', 307 + share * 3000),
        subject: 'ceiling:flue-co-air-free@high',
      };
  }
}

/** Its own small generator: the order must not hang on anything else. */
function shuffle<T>(items: readonly T[], seed: number): readonly T[] {
  let state = seed >>> 0;
  const next = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state;
  };
  return items
    .map((item) => ({ item, order: next() }))
    .sort((one, other) => one.order - other.order)
    .map(({ item }) => item);
}
