/**
 * Random model sheets that are valid: any steps, waits, firing points, fuels, stages and conditions, in any order that
 * the cross-check lets pass. What it refuses (a hold point that waits for itself) is filtered out, not repaired.
 */
import fc from 'fast-check';
import {
  BLOCKS,
  type Block,
  EMITTERS,
  FUELS,
  LAPSES,
  type ModelSheet,
  SHEET_SCHEMA,
} from '../../domain/procedure/modelSheet.ts';
import { parseModelSheet } from '../../domain/procedure/parseModelSheet.ts';
import { QUANTITY_KEYS } from '../../domain/quantity/quantities.ts';

const basis = fc.record({
  kind: fc.constantFrom('maker', 'standard', 'common-practice'),
  source: fc.constantFrom('page 4', 'a clause', 'a habit'),
});
const quantity = fc.constantFrom(...QUANTITY_KEYS);
const blocks = fc.subarray([...BLOCKS]);
const blocksBehindHold = fc.subarray<Block>(['leaving', 'registration']);

/** Everything but the key, which is given once the place in the list is known. */
type Draft = Readonly<Record<string, unknown>> & { readonly kind: string };

function draftItem(firingPoints: readonly string[]): fc.Arbitrary<Draft> {
  const of = <K extends string>(kind: K, fields: Record<string, fc.Arbitrary<unknown>>) =>
    fc.record({ kind: fc.constant(kind), label: fc.constant(`a ${kind}`), ...fields });
  const mayBeNotPossible = fc.boolean();
  return fc.oneof(
    of('confirm', { mayBeNotPossible, notApplicable: fc.boolean() }),
    of('choose', { mayBeNotPossible, options: options() }),
    of('note', { mayBeNotPossible, holds: fc.constantFrom('text', 'time', 'date') }),
    of('read', { mayBeNotPossible, quantity, point: fc.constantFrom(null, 'cold', 'hot', 'dynamic') }),
    of('series', {
      mayBeNotPossible,
      firingPoint: fc.constantFrom(...firingPoints),
      quantities: fc.uniqueArray(quantity, { minLength: 1, maxLength: 5 }),
    }),
    of('hold', { mayBeNotPossible, seconds: fc.integer({ min: 1, max: 86_400 }), basis }),
    of('tuning', {
      mayBeNotPossible,
      stages: fc
        .uniqueArray(fc.constantFrom('low', 'middle', 'high', 'ignition', 'full'), { minLength: 1 })
        .map((keys) => keys.map((key) => ({ key, label: key }))),
      postRunWaitS: fc.integer({ min: 0, max: 7200 }),
      needsCasingClosed: fc.boolean(),
      needsHeatLoadOpen: fc.boolean(),
      basis,
    }),
    of('photo', { mayBeNotPossible }),
    of('witness', { mayBeNotPossible, by: fc.constantFrom('licensed', 'occupant', 'anyone') }),
    of('sign-off', { mayBeNotPossible: fc.constant(false), by: fc.constantFrom('licensed', 'occupant') }),
  );
}

/** At least one option can be left standing, or no run could end. */
function options(): fc.Arbitrary<unknown> {
  const outcome = fc.constantFrom('fine', 'finding', 'stop');
  return fc
    .tuple(fc.constantFrom('fine', 'finding'), fc.array(outcome, { minLength: 1, maxLength: 4 }), fc.nat())
    .map(([good, others, at]) => others.toSpliced(at % (others.length + 1), 0, good))
    .map((outcomes) => outcomes.map((one, index) => ({ value: `option-${index}`, label: 'an option', outcome: one })));
}

type Shape = {
  readonly items: readonly Draft[];
  readonly needsClear: 'firing' | 'leaving' | null;
  readonly blocks: readonly (readonly Block[])[];
  readonly after: readonly number[];
  readonly conditions: readonly Condition[];
};
type Condition = {
  readonly fuels: readonly string[] | null;
  readonly emitters: readonly string[] | null;
  readonly hangsOn: number | null;
  readonly lapses: string | null | undefined;
};

const condition: fc.Arbitrary<Condition> = fc.record({
  fuels: fc.oneof({ weight: 6, arbitrary: fc.constant(null) }, fc.subarray([...FUELS], { minLength: 1 })),
  emitters: fc.oneof({ weight: 6, arbitrary: fc.constant(null) }, fc.subarray([...EMITTERS], { minLength: 1 })),
  hangsOn: fc.option(fc.nat({ max: 40 }), { freq: 3 }),
  lapses: fc.constantFrom(...LAPSES, null, undefined),
});

function stepShape(firingPoints: readonly string[]): fc.Arbitrary<Shape> {
  return fc.integer({ min: 1, max: 6 }).chain((length) => {
    const exactly = { minLength: length, maxLength: length };
    return fc.constantFrom('firing', 'leaving', null).chain((needsClear) =>
      fc.record({
        items: fc.array(draftItem(firingPoints), exactly),
        needsClear: fc.constant(needsClear as Shape['needsClear']),
        blocks: fc.array(needsClear === null ? blocks : blocksBehindHold, exactly),
        after: fc.array(fc.nat({ max: 20 }), { maxLength: 2 }),
        conditions: fc.array(condition, exactly),
      }),
    );
  });
}

function buildSteps(shapes: readonly Shape[]): readonly unknown[] {
  const asked: { key: string; is: readonly string[] }[] = [];
  return shapes.map((shape, stepIndex) => ({
    key: `step-${stepIndex}`,
    title: `Step ${stepIndex}`,
    who: 'anyone',
    needsClear: shape.needsClear,
    after: stepIndex === 0 ? [] : [...new Set(shape.after.map((earlier) => `step-${earlier % stepIndex}`))],
    items: shape.items.map((draft, itemIndex) => {
      const key = `item-${stepIndex}-${itemIndex}`;
      const wanted = shape.conditions[itemIndex];
      const hangsOn =
        wanted === undefined || wanted.hangsOn === null ? undefined : asked[wanted.hangsOn % Math.max(1, asked.length)];
      if (draft.kind === 'confirm') asked.push({ key, is: ['yes'] }, { key, is: ['no'] });
      if (draft.kind === 'choose') asked.push({ key, is: ['option-0'] });
      return {
        ...draft,
        key,
        blocks: shape.blocks[itemIndex] ?? [],
        ...(wanted?.lapses === undefined ? {} : { lapses: wanted.lapses }),
        onlyFor: {
          ...(wanted?.fuels == null ? {} : { fuels: wanted.fuels }),
          ...(wanted?.emitters == null ? {} : { emitters: wanted.emitters }),
          ...(hangsOn === undefined ? {} : { answer: { item: hangsOn.key, is: hangsOn.is } }),
        },
      };
    }),
  }));
}

const firingPointKeys = fc.uniqueArray(fc.constantFrom('high', 'mid', 'low', 'part', 'boost'), { minLength: 1 });

const altitude = fc.oneof(
  fc.constant({ method: 'not-on-sheet' }),
  basis.map((one) => ({ method: 'no-derate', basis: one })),
  fc.record({
    method: fc.constant('per-1000-ft'),
    pct: fc.integer({ min: 1, max: 10 }),
    fromFt: fc.integer({ min: 0, max: 5000 }),
    countedFrom: fc.constantFrom('sea-level', 'threshold'),
    basis,
  }),
);

/** A sheet as a file would hold it. */
export const sheetFileArbitrary: fc.Arbitrary<unknown> = firingPointKeys.chain((points) =>
  fc
    .record({
      fuels: fc.subarray([...FUELS], { minLength: 1 }),
      settles: fc.array(fc.integer({ min: 0, max: 3600 }), { minLength: points.length, maxLength: points.length }),
      minSamples: fc.integer({ min: 1, max: 5 }),
      altitude,
      basis,
      inputTolerancePct: fc.integer({ min: 1, max: 25 }),
      startup: fc.array(stepShape(points), { minLength: 1, maxLength: 8 }),
      service: fc.array(stepShape(points), { maxLength: 4 }),
      hours: fc.integer({ min: 1, max: 72 }),
    })
    .map((one) => ({
      schema: SHEET_SCHEMA,
      sheetId: 'random-sheet',
      revision: '2026-01',
      issuedOn: '2026-01-01',
      title: 'A random sheet',
      maker: null,
      models: [],
      appliance: {
        hotWater: 'any',
        burner: 'any',
        exchanger: 'other',
        ratedInputMaxKw: null,
        ratedInputMinKw: null,
        ratedInputBasis: 'gross',
        ventMaxC: null,
        serialPattern: null,
      },
      fuels: one.fuels.map((fuel) => ({ fuel })),
      firingPoints: points.map((key, index) => ({ key, label: key, settleS: one.settles[index] ?? 0 })),
      steady: {
        minSamples: one.minSamples,
        apartS: 60,
        o2Points: 0.2,
        coPpm: 5,
        coPct: 10,
        flueK: 2,
        basis: one.basis,
      },
      limits: [],
      inputTolerancePct: one.inputTolerancePct,
      altitude: one.altitude,
      supplyByEmitter: [],
      lapseHours: { tightness: one.hours, roomCo: one.hours, analyserZero: one.hours, pressure: one.hours },
      startup: buildSteps(one.startup),
      service: buildSteps(one.service),
      cover: null,
    })),
);

export const sheetArbitrary: fc.Arbitrary<ModelSheet> = sheetFileArbitrary
  .map(parseModelSheet)
  .filter((parsed) => parsed.ok)
  .map((parsed) => {
    if (!parsed.ok) throw new Error('filtered out');
    return parsed.value;
  });
