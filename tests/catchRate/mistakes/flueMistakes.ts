/** What goes wrong between the analyser's screen and the boxes. */
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import { changed, type EnteredSet, type Entry, entriesOf, exchanged, lastNumber, numberOf } from '../enteredSet.ts';
import type { Random } from '../random.ts';
import type { InjectedMistake } from './injectedMistake.ts';

const POINTS = ['high', 'low'] as const;

/** CO2max as the list has it: 11.8 for natural gas, 13.75 for LP. */
function listCo2Max(set: EnteredSet): number {
  return set.site.fuel === 'natural-gas' ? 11.8 : 13.75;
}

/** r = CO2 − CO2max · (20.9 − O2) / 20.9 of the newest sample, as typed. */
function residual(set: EnteredSet, point: string): number {
  const o2 = lastNumber(set, 'o2DryVolPct', point) ?? 0;
  const co2 = lastNumber(set, 'co2DryVolPct', point) ?? 0;
  return co2 - (listCo2Max(set) * (20.9 - o2)) / 20.9;
}

/** More than this is a mistake, says the list; less is within what real pairs differ by. */
const CLEAR_RESIDUAL = 0.6;

/** The point whose texts were changed. */
function changedPoint(mistaken: EnteredSet, clean: EnteredSet): string {
  const index = mistaken.entries.findIndex((entry, at) => entry.text !== clean.entries[at]?.text);
  return mistaken.entries[index]?.point ?? 'high';
}

function sameMark(entry: Entry, value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return entry.text.includes(',') ? text.replace('.', ',') : text;
}

const o2Co2Swapped: InjectedMistake = {
  row: 1,
  title: 'O₂ and CO₂ swapped',
  inject: (set, random) => {
    const point = random.pick(POINTS);
    return exchanged(set, ['o2DryVolPct', point], ['co2DryVolPct', point]);
  },
  isCatchable: (mistaken, clean) => Math.abs(residual(mistaken, changedPoint(mistaken, clean))) > CLEAR_RESIDUAL,
};

const otherFuel: InjectedMistake = {
  row: 2,
  title: 'analyser on the wrong fuel',
  inject: (set, random) => {
    // A cell for CO2 reads what is there whatever the setting.
    if (set.measuresCo2) return null;
    const co2MaxPct = set.site.fuel === 'natural-gas' ? random.pick([13.7, 13.8]) : random.pick([11.7, 11.8, 11.9, 12]);
    const withFuel = (one: EnteredSet, point: string) =>
      changed(one, 'co2DryVolPct', point, (entry) => {
        const o2 = entriesOf(one, 'o2DryVolPct', point).find(({ sample }) => sample === entry.sample);
        return { text: sameMark(entry, (co2MaxPct * (20.9 - numberOf(o2?.text ?? '5'))) / 20.9, 1) };
      });
    return POINTS.reduce(withFuel, set);
  },
  isCatchable: () => true,
};

const airFreeAsMeasured: InjectedMistake = {
  row: 3,
  title: 'CO air-free typed as measured',
  inject: (set, random) => {
    const point = random.pick(POINTS);
    if (entriesOf(set, 'coAirFreePpm', point).length === 0) {
      // Only one box: the air-free figure stands where the measured one belongs, and nothing contradicts it.
      return changed(set, 'coPpm', point, (entry) => {
        const o2 = lastNumber(set, 'o2DryVolPct', point) ?? 5;
        return { text: ((numberOf(entry.text) * 20.9) / (20.9 - o2)).toFixed(0) };
      });
    }
    return exchanged(set, ['coPpm', point], ['coAirFreePpm', point]);
  },
  // Both boxes filled, and the two far enough apart to be told by whole ppm and 5 %.
  isCatchable: (mistaken, clean) => {
    const point = changedPoint(mistaken, clean);
    const co = lastNumber(mistaken, 'coPpm', point);
    const airFree = lastNumber(mistaken, 'coAirFreePpm', point);
    const o2 = lastNumber(mistaken, 'o2DryVolPct', point);
    if (co === null || airFree === null || o2 === null) return false;
    const expected = (co * 20.9) / (20.9 - o2);
    return Math.abs(airFree - expected) > expected * 0.05 + 2;
  },
};

const coInPercent: InjectedMistake = {
  row: 4,
  title: 'CO in % not ppm',
  inject: (set, random) =>
    changed(set, 'coPpm', random.pick(POINTS), (entry) => ({
      text: sameMark(entry, numberOf(entry.text) / 10_000, 4),
    })),
  // A zero is a zero in either unit.
  isCatchable: (mistaken, clean) => (lastNumber(mistaken, 'coPpm', changedPoint(mistaken, clean)) ?? 0) > 0,
};

const overRange: InjectedMistake = {
  row: 5,
  title: 'over-range written as a value',
  inject: (set, random) => changed(set, 'coPpm', random.pick(POINTS), () => ({ text: String(set.coRangeMaxPpm) })),
  isCatchable: () => true,
};

const ratioMistyped: InjectedMistake = {
  row: 6,
  title: 'CO/CO₂ mistyped',
  inject: (set, random) => {
    const point = random.pick(POINTS);
    if (entriesOf(set, 'coCo2Ratio', point).length === 0) return null;
    const factor = random.pick([10, 0.1]);
    return changed(set, 'coCo2Ratio', point, (entry) => ({ text: sameMark(entry, numberOf(entry.text) * factor, 4) }));
  },
  // Four decimals on the screen: what differs by no more than two last places can't be told.
  isCatchable: (mistaken, clean) => {
    const point = changedPoint(mistaken, clean);
    const expected =
      (lastNumber(mistaken, 'coPpm', point) ?? 0) / ((lastNumber(mistaken, 'co2DryVolPct', point) ?? 9) * 1e4);
    return Math.abs((lastNumber(mistaken, 'coCo2Ratio', point) ?? 0) - expected) > expected * 0.1 + 0.0002;
  },
};

/** Boxes with a decimal, and the most the quantity is in any boiler room, in the box's own unit. */
function decimalBoxes(
  set: EnteredSet,
): readonly { readonly quantity: QuantityKey; readonly point: string | null; readonly most: number }[] {
  const us = set.unitSystem === 'us';
  const water = us ? 240 : 115;
  return [
    { quantity: 'o2DryVolPct', point: 'high', most: 21 },
    { quantity: 'co2DryVolPct', point: 'low', most: 20 },
    // A condensing boiler's flue gas.
    { quantity: 'flueGasC', point: 'high', most: us ? 230 : 110 },
    { quantity: 'supplyC', point: 'high', most: water },
    { quantity: 'returnC', point: 'low', most: water },
    { quantity: 'systemPressureBarG', point: 'cold', most: us ? 45 : 3 },
    // 14 in. w.c. for natural gas, 50 mbar systems with their tolerance for LP.
    {
      quantity: 'inletPressureMbarG',
      point: 'dynamic',
      most: set.site.fuel === 'natural-gas' ? (us ? 14 : 36) : us ? 23 : 58,
    },
    { quantity: 'waterPh', point: 'after', most: 14 },
  ];
}

const pointMissing: InjectedMistake = {
  row: 7,
  title: 'decimal point missing',
  inject: (set, random) => {
    const boxes = decimalBoxes(set).filter(({ quantity, point }) =>
      entriesOf(set, quantity, point).every((entry) => /[.,]\d/.test(entry.text)),
    );
    const [first, ...others] = boxes;
    if (first === undefined) return null;
    const { quantity, point } = random.pick([first, ...others]);
    return changed(set, quantity, point, (entry) => ({ text: entry.text.replace(/[.,]/, '') }));
  },
  isCatchable: (mistaken, clean) => {
    const index = mistaken.entries.findIndex((entry, at) => entry.text !== clean.entries[at]?.text);
    const entry = mistaken.entries[index];
    const box = decimalBoxes(mistaken).find(
      ({ quantity, point }) => quantity === entry?.quantity && point === entry.point,
    );
    return entry !== undefined && box !== undefined && numberOf(entry.text) > box.most;
  },
};

function transposed(text: string, random: Random): string | null {
  const places = [...text].flatMap((letter, index) => (/\d/.test(letter) ? [index] : []));
  const pairs = places.slice(0, -1).map((place, at) => [place, places[at + 1] ?? place] as const);
  const different = pairs.filter(([one, other]) => text[one] !== text[other]);
  const [first, ...others] = different;
  if (first === undefined) return null;
  const [one, other] = random.pick([first, ...others]);
  const letters = [...text];
  [letters[one], letters[other]] = [text[other] ?? '', text[one] ?? ''];
  return letters.join('');
}

const digitsTransposed: InjectedMistake = {
  row: 17,
  title: 'digits transposed when carrying',
  inject: (set, random) => {
    const quantity = random.pick(['typedGasRateM3PerH', 'co2DryVolPct', 'o2DryVolPct']);
    const point = quantity === 'typedGasRateM3PerH' ? null : random.pick(POINTS);
    const last = entriesOf(set, quantity, point).at(-1);
    const text = last === undefined ? null : transposed(last.text, random);
    if (text === null) return null;
    return changed(set, quantity, point, () => ({ text }));
  },
  // The list: computed from raw, off by more than 2 %; a flue pair off by more than 0.6 point.
  isCatchable: (mistaken, clean) => {
    const index = mistaken.entries.findIndex((entry, at) => entry.text !== clean.entries[at]?.text);
    const [wrong, right] = [mistaken.entries[index], clean.entries[index]];
    if (wrong === undefined || right === undefined) return false;
    if (wrong.quantity !== 'typedGasRateM3PerH')
      return Math.abs(residual(mistaken, wrong.point ?? 'high')) > CLEAR_RESIDUAL;
    return Math.abs(numberOf(wrong.text) / numberOf(right.text) - 1) > 0.03;
  },
};

const flueBelowReturn: InjectedMistake = {
  row: 19,
  title: 'flue temperature below return',
  inject: (set, random) => {
    if (random.chance(0.5)) return exchanged(set, ['flueGasC', 'high'], ['returnC', 'high']);
    // The probe hangs in the air or lost its contact: it shows the intake air.
    const air = entriesOf(set, 'intakeAirC', 'high').at(-1);
    return air === undefined ? null : changed(set, 'flueGasC', 'high', () => ({ text: air.text }));
  },
  // The list: more than about 5 °C below return is not physical.
  isCatchable: (mistaken) => {
    const flue = lastNumber(mistaken, 'flueGasC', 'high') ?? 0;
    const returned = lastNumber(mistaken, 'returnC', 'high') ?? 0;
    return returned - flue > (mistaken.unitSystem === 'us' ? 9 : 5);
  },
};

export const FLUE_MISTAKES: readonly InjectedMistake[] = [
  o2Co2Swapped,
  otherFuel,
  airFreeAsMeasured,
  coInPercent,
  overRange,
  ratioMistyped,
  pointMissing,
  digitsTransposed,
  flueBelowReturn,
];
