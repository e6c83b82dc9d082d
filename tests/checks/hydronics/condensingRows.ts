/** Flue gas dew point and condensate: C1–C8, and the printed table. */
import { lambdaFromCo2 } from '../../../domain/combustion/airRatio.ts';
import { combustionProducts } from '../../../domain/combustion/combustionProducts.ts';
import { condensateKgPerKwh, condensateLPerH } from '../../../domain/combustion/condensate.ts';
import { flueDewPointC } from '../../../domain/combustion/dewPoint.ts';
import { G20, G31 } from '../../../domain/combustion/fuels.ts';
import { btuPerHToKw, celsiusToFahrenheit, litresToUsGallons } from '../../../domain/quantity/conversions.ts';
import { unwrap } from '../../../domain/result.ts';
import type { CheckRow } from '../checkRow.ts';
import { computed, percent, published } from './rowKinds.ts';

const BALANCE = 'stoichiometry and IAPWS R7-97(2012)';
const CONDENSATE_PAGES = 'energy trade pages on condensate (≈150)';
const METHANE = G20;
const PROPANE = G31;
const DRY_AIR = { airC: 20, relativeHumidityPct: 0 };

function dewPoint(fuel: typeof G20, lambda: number, pressureKpaAbs = 101.325): number {
  return unwrap(flueDewPointC({ fuel, lambda, pressureKpaAbs, air: DRY_AIR }));
}
function products(fuel: typeof G20, lambda: number) {
  return unwrap(combustionProducts({ fuel, lambda, airVapourMolPerMol: 0 }));
}
function waterPct(lambda: number): number {
  const { waterMol, dryMol } = products(METHANE, lambda);
  return (100 * waterMol) / (waterMol + dryMol);
}
function lambdaAt(co2DryVolPct: number): number {
  return unwrap(lambdaFromCo2({ fuel: METHANE, co2DryVolPct }));
}
function condensateG(basis: 'gross' | 'net'): number {
  return 1000 * unwrap(condensateKgPerKwh({ fuel: METHANE, basis, condensedFraction: 1 }));
}
function hundredMbhLPerH(): number {
  return unwrap(condensateLPerH({ fuel: METHANE, inputKwGross: btuPerHToKw(100_000), condensedFraction: 1 }));
}

export const condensingRows: readonly CheckRow[] = [
  ...(
    [
      [1.0, 59.2],
      [1.1, 57.3],
      [1.2, 55.7],
      [1.3, 54.1],
      [1.5, 51.4],
    ] as const
  ).map(([lambda, expected]) =>
    computed(`C1.${lambda * 10}`, `CH4, λ ${lambda}, dry air, 101.3 kPa`, 'dew point, °C', expected, 0.2, BALANCE, () =>
      dewPoint(METHANE, lambda),
    ),
  ),
  ...(
    [
      [1.0, 11.7, 0.0],
      [1.1, 10.5, 2.1],
      [1.2, 9.6, 3.8],
      [1.3, 8.8, 5.3],
      [1.5, 7.5, 7.5],
    ] as const
  ).flatMap(([lambda, co2, o2]) => [
    computed(
      `C2.co2-${lambda * 10}`,
      `CH4, λ ${lambda}`,
      'dry CO2, %',
      co2,
      0.1,
      BALANCE,
      () => products(METHANE, lambda).co2DryVolPct,
    ),
    computed(
      `C2.o2-${lambda * 10}`,
      `CH4, λ ${lambda}`,
      'dry O2, %',
      o2,
      0.1,
      BALANCE,
      () => products(METHANE, lambda).o2DryVolPct,
    ),
  ]),
  ...(
    [
      [1.0, 54.9],
      [1.2, 51.4],
      [1.4, 48.5],
    ] as const
  ).map(([lambda, expected]) =>
    computed(`C3.${lambda * 10}`, `C3H8, λ ${lambda}`, 'dew point, °C', expected, 0.2, BALANCE, () =>
      dewPoint(PROPANE, lambda),
    ),
  ),
  // λ is printed to two decimals.
  computed('C4.lambda', 'CH4, CO2 9.0 % dry', 'λ', 1.27, 0.005, BALANCE, () => lambdaAt(9)),
  computed('C4.dew', 'CH4, CO2 9.0 % dry', 'dew point, °C', 54.6, 0.2, BALANCE, () => dewPoint(METHANE, lambdaAt(9))),
  computed('C5', 'λ 1.2 at 80 kPa air pressure', 'dew point, °C', 50.8, 0.2, BALANCE, () => dewPoint(METHANE, 1.2, 80)),
  computed('C6.gross', 'CH4, condensate ceiling', 'g/kWh gross', 146, 1, CONDENSATE_PAGES, () => condensateG('gross')),
  computed('C6.net', 'CH4, condensate ceiling', 'g/kWh net', 162, 1, CONDENSATE_PAGES, () => condensateG('net')),
  computed('C7.litres', '100,000 Btu/h gross input, all condensed', 'L/h', 4.27, percent(1), BALANCE, hundredMbhLPerH),
  computed('C7.gallons', 'same', 'US gal/h', 1.13, percent(1), BALANCE, () => litresToUsGallons(hundredMbhLPerH())),
  computed('C8.water', 'CH4, dry flue 9.15 % CO2, 4 % O2', 'water share, %', 15.5, 0.1, BALANCE, () =>
    waterPct(lambdaAt(9.15)),
  ),
  computed('C8.dew', 'same', 'dew point, °C', 54.9, 0.1, BALANCE, () => dewPoint(METHANE, lambdaAt(9.15))),
];

/** λ, dry CO2 %, dry O2 %, H2O %, dew point °C, °F for CH4; dry CO2 %, dew point °C for C3H8. */
const TABLE = [
  [1.0, 11.7, 0.0, 19.0, 59.2, 138.6, 13.7, 54.9],
  [1.1, 10.5, 2.1, 17.4, 57.3, 135.2, 12.4, 53.0],
  [1.2, 9.6, 3.8, 16.1, 55.7, 132.2, 11.3, 51.4],
  [1.25, 9.1, 4.6, 15.5, 54.9, 130.8, 10.8, 50.6],
  [1.3, 8.8, 5.3, 14.9, 54.1, 129.4, 10.3, 49.9],
  [1.4, 8.1, 6.5, 13.9, 52.7, 126.9, 9.6, 48.5],
  [1.5, 7.5, 7.5, 13.1, 51.4, 124.5, 8.9, 47.2],
  [2.0, 5.5, 11.1, 10.0, 46.0, 114.8, 6.6, 41.9],
] as const;

/** Tolerances as the numbered rows give them. */
export const condensingTableRows: readonly CheckRow[] = TABLE.flatMap(
  ([lambda, co2, o2, water, dewC, dewF, propaneCo2, propaneDewC]) => {
    const id = `CT-${lambda * 100}`;
    const inputs = `λ ${lambda}, dry air, 101.3 kPa`;
    return [
      computed(`${id}.co2`, inputs, 'CH4 dry CO2, %', co2, 0.1, BALANCE, () => products(METHANE, lambda).co2DryVolPct),
      computed(`${id}.o2`, inputs, 'CH4 dry O2, %', o2, 0.1, BALANCE, () => products(METHANE, lambda).o2DryVolPct),
      computed(`${id}.water`, inputs, 'CH4 H2O, %', water, 0.1, BALANCE, () => waterPct(lambda)),
      computed(`${id}.dew`, inputs, 'CH4 dew point, °C', dewC, 0.2, BALANCE, () => dewPoint(METHANE, lambda)),
      computed(`${id}.dew-f`, inputs, 'CH4 dew point, °F', dewF, 0.36, BALANCE, () =>
        celsiusToFahrenheit(dewPoint(METHANE, lambda)),
      ),
      computed(
        `${id}.propane-co2`,
        inputs,
        'C3H8 dry CO2, %',
        propaneCo2,
        0.1,
        BALANCE,
        () => products(PROPANE, lambda).co2DryVolPct,
      ),
      computed(`${id}.propane-dew`, inputs, 'C3H8 dew point, °C', propaneDewC, 0.2, BALANCE, () =>
        dewPoint(PROPANE, lambda),
      ),
    ];
  },
);

/** What practice prints for the ceiling C6 works out. */
export const condensatePracticeRows: readonly CheckRow[] = [
  published('CP.condensate', 'condensate of natural gas at best', 'mL/kWh', 150, 5, CONDENSATE_PAGES, () =>
    condensateG('gross'),
  ),
];
