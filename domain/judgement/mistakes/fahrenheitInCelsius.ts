/** Degrees Fahrenheit typed where Celsius is asked for. */
import { fahrenheitToCelsius } from '../../quantity/conversions.ts';
import type { QuantityKey } from '../../quantity/quantities.ts';
import type { Measured } from '../measured.ts';
import type { RunContext } from '../runContext.ts';
import { pairOf, type SampleRow } from '../sampleRows.ts';
import { change, type MistakeRule, mistakeFinding } from './mistakeFinding.ts';
import { CONDENSING_FLUE_MAX_C, isCondensing } from './plausibleRanges.ts';

/** Water in a heating system stays below this; at a tap far below. */
const HOTTEST_WATER_C = 95;
const WATER: readonly QuantityKey[] = ['supplyC', 'returnC', 'mixedOutletC', 'hotOutletC', 'storeC', 'manifoldSupplyC'];
/** No boiler is run across this much; a pair further apart is two scales. */
const LARGEST_DELTA_T_K = 45;
/** Air drawn in by a burner indoors or from outside. */
const HOTTEST_INTAKE_C = 45;

export const fahrenheitInCelsius: MistakeRule = {
  row: 8,
  find: (context) => [
    ...WATER.flatMap((quantity) => context.all(quantity).filter((one) => isTypedInCelsius(one)))
      .filter((one) => one.value > HOTTEST_WATER_C && isWarmWater(fahrenheitToCelsius(one.value)))
      .map((one) => ask([one], `water above ${HOTTEST_WATER_C} °C, and as °F it is usual`, [one], context)),
    ...context
      .all('intakeAirC')
      .filter((one) => isTypedInCelsius(one) && one.value > HOTTEST_INTAKE_C)
      .map((one) => ask([one], `intake air above ${HOTTEST_INTAKE_C} °C, and as °F it is usual`, [one], context)),
    ...context.rows.flatMap((row) => [...flueTooHot(row, context), ...tooFarApart(row, context)]),
  ],
};

function flueTooHot(row: SampleRow, context: RunContext) {
  const flue = row.get('flueGasC');
  const returned = row.near('returnC');
  if (!flue || !isTypedInCelsius(flue) || !isCondensing(context)) return [];
  const converted = fahrenheitToCelsius(flue.value);
  const isUsualConverted = converted > (returned?.value ?? 25) - 5 && converted < CONDENSING_FLUE_MAX_C;
  const isFarAboveReturn = returned !== undefined && flue.value - returned.value > LARGEST_OVER_RETURN_K;
  const { ventMaxC } = context.sheet.appliance;
  const isTooHot = flue.value > Math.min(CONDENSING_FLUE_MAX_C, ventMaxC ?? CONDENSING_FLUE_MAX_C);
  if (!isUsualConverted || !(isTooHot || isFarAboveReturn)) return [];
  return [ask([flue], 'flue gas hotter than a condensing boiler’s, and as °F it is usual', [flue], context)];
}

/** Condensing boilers run 5–30 K over return at high fire; twice that is another kind of boiler or another scale. */
const LARGEST_OVER_RETURN_K = 60;

function tooFarApart(row: SampleRow, context: RunContext) {
  const pair = pairOf(row, 'supplyC', 'returnC');
  if (pair === undefined) return [];
  const [supply, returned] = pair;
  if (Math.abs(supply.value - returned.value) <= LARGEST_DELTA_T_K) return [];
  const hotter = supply.value > returned.value ? supply : returned;
  const other = hotter === supply ? returned : supply;
  if (!isTypedInCelsius(hotter) || hotter.value > HOTTEST_WATER_C) return [];
  const difference = fahrenheitToCelsius(hotter.value) - other.value;
  const isUsual = hotter === supply ? difference > 0 && difference < LARGEST_DELTA_T_K : difference < 0;
  if (!isUsual) return [];
  return [ask([supply, returned], `supply and return more than ${LARGEST_DELTA_T_K} K apart`, [hotter], context)];
}

function ask(about: readonly Measured[], rule: string, toConvert: readonly Measured[], context: RunContext) {
  return mistakeFinding(
    {
      code: 'fahrenheit-in-celsius',
      about,
      from: 'practice',
      rule,
      ask: '°F or °C?',
      suggestions: toConvert.map((one) => change('fahrenheit-in-celsius', [one, fahrenheitToCelsius(one.value)])),
    },
    context,
  );
}

function isTypedInCelsius(one: Measured): boolean {
  return one.reading.typedUnit !== '°F';
}

function isWarmWater(celsius: number): boolean {
  return celsius >= 20 && celsius <= HOTTEST_WATER_C;
}
