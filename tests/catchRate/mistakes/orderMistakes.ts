/** The right numbers in the wrong place, at the wrong time, or none at all. */
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import { changed, type EnteredSet, entriesOf, exchanged, lastNumber, numberOf, SETTLE_S } from '../enteredSet.ts';
import type { InjectedMistake } from './injectedMistake.ts';

const POINTS = ['high', 'low'] as const;

function difference(
  set: EnteredSet,
  one: readonly [QuantityKey, string],
  other: readonly [QuantityKey, string],
): number {
  return (lastNumber(set, ...one) ?? 0) - (lastNumber(set, ...other) ?? 0);
}

const staticDynamic: InjectedMistake = {
  row: 13,
  title: 'static and dynamic swapped',
  inject: (set) => exchanged(set, ['inletPressureMbarG', 'static'], ['inletPressureMbarG', 'dynamic']),
  // Static is never below dynamic; a drop smaller than two manometer readings can tell (0.5 mbar) is none.
  isCatchable: (mistaken) =>
    difference(mistaken, ['inletPressureMbarG', 'dynamic'], ['inletPressureMbarG', 'static']) *
      (mistaken.unitSystem === 'us' ? 2.49 : 1) >
    0.5,
};

const supplyReturn: InjectedMistake = {
  row: 18,
  title: 'supply and return swapped',
  inject: (set, random) => {
    const point = random.pick(POINTS);
    return exchanged(set, ['supplyC', point], ['returnC', point]);
  },
  // While firing supply is above return; less than 2 K apart two sensors may differ by themselves.
  isCatchable: (mistaken) =>
    POINTS.some(
      (point) =>
        difference(mistaken, ['returnC', point], ['supplyC', point]) / (mistaken.unitSystem === 'us' ? 1.8 : 1) > 2,
    ),
};

const tooEarly: InjectedMistake = {
  row: 20,
  title: 'read before steady or before tuning was done',
  inject: (set, random) => {
    if (random.chance(0.3)) return { ...set, tuningFinishedAtS: set.highReachedAtS + 1500 };
    const point = random.pick(POINTS);
    const reachedAtS = point === 'high' ? set.highReachedAtS : set.lowReachedAtS;
    const firstAtS = reachedAtS + random.between(5, SETTLE_S - 100);
    return {
      ...set,
      entries: set.entries.map((entry) =>
        entry.itemKey === `series-${point}` ? { ...entry, atS: firstAtS + (entry.sample - 1) * 70 } : entry,
      ),
    };
  },
  isCatchable: () => true,
};

const notZeroed: InjectedMistake = {
  row: 21,
  title: 'analyser not zeroed, or zeroed in dirty air',
  inject: (set, random) => {
    switch (random.whole(0, 2)) {
      case 0:
        return {
          ...set,
          entries: set.entries.filter(
            ({ quantity }) => quantity !== 'freshAirCoPpm' && quantity !== 'freshAirO2VolPct',
          ),
        };
      case 1:
        return changed(set, 'freshAirO2VolPct', null, () => ({ text: random.between(19.3, 20.5).toFixed(1) }));
      default:
        return changed(set, 'freshAirCoPpm', null, () => ({
          text: String(random.chance(0.5) ? random.whole(-12, -1) : random.whole(4, 25)),
        }));
    }
  },
  isCatchable: () => true,
};

const outOfDate: InjectedMistake = {
  row: 22,
  title: 'analyser out of date',
  inject: (set, random) => ({ ...set, calibrationDueOn: `2026-0${random.whole(1, 9)}-28` }),
  isCatchable: () => true,
};

const FLUE: readonly QuantityKey[] = [
  'o2DryVolPct',
  'co2DryVolPct',
  'coPpm',
  'coAirFreePpm',
  'coCo2Ratio',
  'flueGasC',
  'supplyC',
  'returnC',
  'intakeAirC',
  'fanSpeedRpm',
];

const highLow: InjectedMistake = {
  row: 23,
  title: 'high and low swapped',
  inject: (set) => FLUE.reduce((one, quantity) => exchanged(one, [quantity, 'high'], [quantity, 'low']), set),
  // Fan speed says so where it was typed; otherwise the flue's rise over return, where the two rates differ by clearly more
  // than two flue readings can be off (4 K).
  isCatchable: (mistaken) => {
    if (entriesOf(mistaken, 'fanSpeedRpm').length > 0) return true;
    const perK = mistaken.unitSystem === 'us' ? 1.8 : 1;
    const rise = (point: string) => difference(mistaken, ['flueGasC', point], ['returnC', point]) / perK;
    return rise('low') - rise('high') > 4;
  },
};

const copied: InjectedMistake = {
  row: 24,
  title: 'copied readings',
  inject: (set, random) => {
    if (random.chance(0.5)) {
      // The high-fire column once more for low fire.
      return {
        ...set,
        entries: set.entries.map((entry) => {
          if (entry.point !== 'low' || !FLUE.includes(entry.quantity)) return entry;
          const source = entriesOf(set, entry.quantity, 'high').find(({ sample }) => sample === entry.sample);
          return source === undefined ? entry : { ...entry, text: source.text };
        }),
      };
    }
    const lastJob = Object.fromEntries(
      (['o2DryVolPct', 'co2DryVolPct', 'coPpm', 'flueGasC'] as const).map(
        (quantity) => [`${quantity}@high`, lastNumber(set, quantity, 'high') ?? 0] as const,
      ),
    );
    return { ...set, lastJob };
  },
  isCatchable: () => true,
};

const fieldsSwapped: InjectedMistake = {
  row: 34,
  title: 'inhibitor and pH swapped, ppm and ppb',
  inject: (set, random) =>
    random.chance(0.5)
      ? exchanged(set, ['waterPh', 'after'], ['inhibitorPct', 'after'])
      : changed(set, 'chlorideMgPerL', 'after', (entry) => ({ text: String(numberOf(entry.text) * 1000) })),
  // The list: a band per field. pH of a heating system 5.5–11.5; chloride beyond 2000 mg/L is sea water.
  isCatchable: (mistaken) => {
    const ph = lastNumber(mistaken, 'waterPh', 'after') ?? 7;
    return ph < 5.5 || (lastNumber(mistaken, 'chlorideMgPerL', 'after') ?? 0) > 2000;
  },
};

const blank: InjectedMistake = {
  row: 35,
  title: 'blank read as zero',
  inject: (set, random) => {
    const quantity = random.pick(['coPpm', 'o2DryVolPct', 'flueGasC', 'returnC', 'systemPressureBarG']);
    const point = quantity === 'systemPressureBarG' ? 'cold' : 'low';
    const text = random.chance(0.7) ? '' : '0';
    return changed(set, quantity, point, () => ({ text }));
  },
  // Nothing typed can be told from zero. A typed zero is one; only what never reads zero in use gives it away.
  isCatchable: (mistaken, clean) => {
    const index = mistaken.entries.findIndex((entry, at) => entry.text !== clean.entries[at]?.text);
    const entry = mistaken.entries[index];
    if (entry === undefined) return false;
    if (entry.text === '') return true;
    return entry.quantity !== 'coPpm';
  },
};

export const ORDER_MISTAKES: readonly InjectedMistake[] = [
  staticDynamic,
  supplyReturn,
  tooEarly,
  notZeroed,
  outOfDate,
  highLow,
  copied,
  fieldsSwapped,
  blank,
];
