/** What a finding knows beside its number: before and after, what is asked for and needed, where to look. One line each. */
import type { Finding } from '../../../domain/judgement/finding.ts';
import { FUELS, type FuelKey } from '../../../domain/procedure/modelSheet.ts';
import { formatQuantity } from '../../../domain/quantity/formatQuantity.ts';
import type { UnitSystem } from '../../../domain/quantity/preferredUnit.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import { figures } from './figures.ts';
import { fuelWords } from './reasonWords.ts';
import { resultText } from './resultText.ts';

type Inputs = Finding['basis']['inputs'];

export function factWords({ basis }: Pick<Finding, 'basis'>, unitSystem: UnitSystem): readonly string[] {
  const { inputs } = basis;
  const read = (quantity: QuantityKey, value: number) => {
    const { text, unit } = formatQuantity(quantity, value, unitSystem);
    return unit === '' ? text : `${text} ${unit}`;
  };
  return [
    ...ifBoth(inputs, 'before', 'after', (before, after) => `Before the work ${before}, after it ${after}.`),
    ...ifNumbers(
      inputs,
      'supplyAskedForC',
      'supplyNeededC',
      (asked, needed) =>
        `It asks for water of ${read('supplyC', asked)}; the weather needs ${read('supplyC', needed)}.`,
    ),
    ...ifText(inputs, 'lookAt', (lookAt) => `Look at: ${lookAt}.`),
    ...ifNumber(inputs, 'marginK', (marginK) =>
      inputs['condenses'] === 'yes'
        ? `The return is ${kelvin(-marginK, unitSystem)} below: the flue gas condenses.`
        : `The return is ${kelvin(marginK, unitSystem)} above: the flue gas does not condense.`,
    ),
    ...ifText(
      inputs,
      'analyserSetTo',
      (fuels) => `The analyser is set to ${knownFuels(fuels)}. That is not which fuel burned.`,
    ),
    ...ifNumber(inputs, 'lowestFireKw', (lowestKw) => zoneWords(inputs, lowestKw, unitSystem)),
    ...ifNumber(inputs, 'atReliefPct', (atReliefPct) => `By the relief valve’s setting: ${figures(atReliefPct)} %.`),
    ...ifNumbers(
      inputs,
      'preChargeBeforeBarG',
      'beforeAtReliefPct',
      (before, atReliefPct) =>
        `At the ${read('vesselPreChargeBarG', before)} found before it took nothing up to there, and ${figures(atReliefPct)} % by the relief valve’s setting.`,
    ),
  ];
}

function zoneWords(inputs: Inputs, lowestKw: number, unitSystem: UnitSystem): string {
  const lowest = resultText({ value: lowestKw, unit: 'kW', plusMinus: null }, unitSystem);
  const cycles = `The lowest fire is ${lowest}: on “${inputs['zone']}” alone the burner will cycle.`;
  return inputs['holdsHighFire'] === 'yes'
    ? cycles
    : `${cycles} High fire can’t be held on it: open more zones or draw hot water before it is measured.`;
}

function kelvin(difference: number, unitSystem: UnitSystem): string {
  return resultText({ value: difference, unit: 'K', plusMinus: null }, unitSystem);
}

function knownFuels(fuels: string): string {
  return fuels
    .split(', ')
    .map((one) => (isFuel(one) ? fuelWords(one) : one))
    .join(' or ');
}

function isFuel(text: string): text is FuelKey {
  return FUELS.some((fuel) => fuel === text);
}

type Shown = number | string;

function ifBoth(inputs: Inputs, one: string, other: string, say: (one: Shown, other: Shown) => string) {
  const [first, second] = [inputs[one], inputs[other]];
  return first === undefined || second === undefined ? [] : [say(first, second)];
}

function ifNumbers(inputs: Inputs, one: string, other: string, say: (one: number, other: number) => string) {
  const [first, second] = [inputs[one], inputs[other]];
  return typeof first === 'number' && typeof second === 'number' ? [say(first, second)] : [];
}

function ifNumber(inputs: Inputs, key: string, say: (value: number) => string) {
  const value = inputs[key];
  return typeof value === 'number' ? [say(value)] : [];
}

function ifText(inputs: Inputs, key: string, say: (text: string) => string) {
  const value = inputs[key];
  return typeof value === 'string' ? [say(value)] : [];
}
