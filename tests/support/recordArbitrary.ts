/** Random records of runs: any readings at any points and times, consistent with nothing, of a given sheet or none. */
import fc from 'fast-check';
import { EMITTERS, FUELS, type ModelSheet } from '../../domain/procedure/modelSheet.ts';
import type { RecordedReading, RunRecord } from '../../domain/procedure/runRecord.ts';
import { entryUnits } from '../../domain/quantity/entryUnits.ts';
import { QUANTITY_KEYS, type QuantityKey, quantitySpec } from '../../domain/quantity/quantities.ts';
import { ANALYSER, at, MANOMETER } from './recordBuilder.ts';

const minutes = fc.integer({ min: 0, max: 3000 });
const instant = minutes.map(at);
const OTHER_POINTS = [null, 'static', 'dynamic', 'dynamic-all-on', 'cold', 'hot', 'after', 'nowhere'];

export function recordArbitrary(sheet: ModelSheet): fc.Arbitrary<RunRecord> {
  const points = [...sheet.firingPoints.map(({ key }) => key), ...OTHER_POINTS];
  const items = [...sheet.startup, ...sheet.service].flatMap((step) =>
    step.items.map((item) => ({ stepKey: step.key, itemKey: item.key })),
  );
  const item = fc.constantFrom(...items, { stepKey: 'gone', itemKey: 'gone' });
  const instrumentId = fc.constantFrom(null, ANALYSER.instrumentId, MANOMETER.instrumentId, 'lost');
  return fc.record<RunRecord>({
    runId: fc.constant('run'),
    kind: fc.constantFrom('startup', 'service', 'repair', 'follow-up'),
    fuel: fc.constantFrom(...FUELS),
    startedAt: fc.option(instant),
    site: fc.record({
      altitudeM: fc.option(fc.integer({ min: -400, max: 5000 })),
      systemHeightM: fc.option(fc.integer({ min: 0, max: 100 })),
      systemVolumeL: fc.option(fc.integer({ min: 1, max: 5000 })),
      emitters: fc.subarray([...EMITTERS]),
      fuel: fc.option(fc.constantFrom(...FUELS)),
      gasSupplyKind: fc.constantFrom('meter', 'tank', null),
      meterCompensation: fc.constantFrom('none', 'temperature', 'temperature-pressure', null),
      heatingValueMjPerM3: fc.option(fc.double({ min: 0, max: 500, noNaN: true })),
      heatingValueSource: fc.option(fc.constant('bill')),
      jurisdiction: fc.constantFrom('DE', 'US-CO', 'GB', 'north-america', 'nowhere', ''),
      timeZone: fc.constantFrom('Europe/Berlin', 'America/Denver', 'no/zone'),
      coldWaterC: fc.option(fc.integer({ min: 0, max: 30 })),
    }),
    appliance: fc.record({
      serial: fc.oneof(fc.string({ maxLength: 20 }), fc.constant('AB1234567')),
      maker: fc.constant('Invented Works'),
      model: fc.constant('T 24'),
      plateFuel: fc.option(fc.constantFrom(...FUELS)),
      tagFuel: fc.option(fc.constantFrom(...FUELS)),
      hasConversionRecord: fc.boolean(),
      ratedInputKw: fc.option(fc.double({ min: 0, max: 500, noNaN: true })),
      ratedInputBasis: fc.constantFrom('gross', 'net'),
    }),
    instruments: fc.subarray([ANALYSER, MANOMETER]),
    answers: fc
      .array(
        fc.record({
          item,
          value: fc.constantFrom(null, 'yes', 'no', 'option-0'),
          reason: fc.constantFrom(null, 'why'),
          at: instant,
        }),
        { maxLength: 6 },
      )
      .map((answers) => answers.map(({ item: where, ...answer }) => ({ ...where, ...answer, byId: 'staff-1' }))),
    readings: fc
      .array(
        fc.record({
          item,
          quantity: fc.constantFrom(...QUANTITY_KEYS),
          point: fc.constantFrom(...points),
          share: fc.double({ min: 0, max: 1, noNaN: true }),
          isMeasured: fc.boolean(),
          comparator: fc.constantFrom('=', '=', '=', '>', '<'),
          sample: fc.integer({ min: 1, max: 4 }),
          unitIndex: fc.nat(4),
          measuredAt: instant,
          instrumentId,
          supersededById: fc.constantFrom(null, null, null, 'reading-0', 'gone'),
        }),
        { maxLength: 40 },
      )
      .map((drafts) =>
        drafts.map(({ item: where, share, isMeasured, unitIndex, ...draft }, index): RecordedReading => {
          const units = entryUnits(draft.quantity);
          const unit = units[unitIndex % units.length] ?? units[0];
          const valueOwn = isMeasured || index % 5 > 0 ? possibleValue(draft.quantity, share) : null;
          return {
            ...draft,
            ...where,
            comparator: draft.comparator as RecordedReading['comparator'],
            readingId: `reading-${index}`,
            visitId: 'visit',
            valueOwn,
            typedText: valueOwn === null ? '' : String(unit.fromOwn(valueOwn)),
            typedUnit: unit.symbol,
            notMeasuredReason: valueOwn === null ? 'not possible' : null,
            measuredById: 'staff-1',
            typedById: 'staff-1',
            origin: 'typed',
          };
        }),
      ),
    holds: fc
      .array(
        fc.record({
          item,
          startedAt: instant,
          endedAt: fc.option(instant),
          requiredS: fc.nat(5000),
          clockJumped: fc.boolean(),
        }),
        { maxLength: 3 },
      )
      .map((holds) => holds.map(({ item: where, ...hold }) => ({ ...hold, itemKey: where.itemKey }))),
    tunings: fc
      .array(
        fc.record({ item, startedAt: instant, finishedAt: fc.option(instant), interruptedAt: fc.option(instant) }),
        {
          maxLength: 3,
        },
      )
      .map((runs) =>
        runs.map(({ item: where, ...run }) => ({
          ...run,
          itemKey: where.itemKey,
          stages: [],
          interruptedReason: null,
        })),
      ),
    photos: fc.constant([]),
    firingPoints: fc.array(
      fc.record({ firingPoint: fc.constantFrom(...sheet.firingPoints.map(({ key }) => key)), reachedAt: instant }),
      {
        maxLength: 5,
      },
    ),
    signOffs: fc.constant([]),
    openMakeSafes: fc.nat(2),
    openNotices: fc.constant([]),
  });
}

/** Edges and zero as often as the middle. */
function possibleValue(quantity: QuantityKey, share: number): number {
  const [min, max] = quantitySpec(quantity).possible;
  if (share < 0.1) return share < 0.05 ? min : max;
  if (share < 0.2) return Math.min(max, Math.max(min, 0));
  // Most quantities live in the lower part of what is possible.
  return min + (max - min) * share ** 3;
}
