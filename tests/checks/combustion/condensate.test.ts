/** Condensate and combustion air. Sources by code in ../README.md. */
import { combustionAirM3PerKwhGross } from '../../../domain/combustion/combustionAir.ts';
import { combustionEfficiency } from '../../../domain/combustion/combustionEfficiency.ts';
import {
  condensateKgPerKwh,
  condensateLPerH,
  waterKgPerKgOfOil,
  waterKgPerM3OfGas,
} from '../../../domain/combustion/condensate.ts';
import type { Fuel } from '../../../domain/combustion/fuel.ts';
import { G20, G31, OIL_2 } from '../../../domain/combustion/fuels.ts';
import { EN_437_STATE, type ReferenceState } from '../../../domain/combustion/referenceState.ts';
import {
  cubicMetresToCubicFeet,
  fahrenheitToCelsius,
  litresToUsGallons,
  mbhToKw,
} from '../../../domain/quantity/conversions.ts';
import { unwrap } from '../../../domain/result.ts';
import { type CheckRow, describeCheckRows } from '../checkRow.ts';

const NORMAL_STATE: ReferenceState = {
  combustionTemperature: '25 °C',
  metering: { kind: 'ideal-gas', temperatureC: 0 },
  pressureKpaAbs: 101.325,
};

function usGallonsPerHourAt100Mbh(fuel: Fuel, condensedFraction: number): number {
  return litresToUsGallons(unwrap(condensateLPerH({ fuel, inputKwGross: mbhToKw(100), condensedFraction })));
}

function condensedAt40C(): number {
  return unwrap(
    combustionEfficiency({
      fuel: G20,
      o2DryVolPct: 4.7,
      flueGasC: 40,
      airC: 20,
      airRelativeHumidityPct: 0,
      pressureKpaAbs: 101.325,
    }),
  ).condensedFraction;
}

function airFt3Per1000Btu(fuel: Fuel): number {
  const m3PerKwh = unwrap(
    combustionAirM3PerKwhGross({ fuel, lambda: 1, airC: fahrenheitToCelsius(60), pressureKpaAbs: 101.325 }),
  );
  return cubicMetresToCubicFeet(m3PerKwh * mbhToKw(1));
}

const rows: readonly CheckRow[] = [
  {
    id: 'WAT-01',
    inputs: 'natural gas, all water condensed',
    quantity: 'L per normal m3 gas',
    expected: 1.6,
    tolerance: 0.03,
    kind: 'P',
    source: 'S30 education site [B]',
    compute: () => unwrap(waterKgPerM3OfGas({ fuel: G20, state: NORMAL_STATE })),
  },
  {
    id: 'WAT-02',
    inputs: 'G20, per m3 at 15 °C',
    quantity: 'kg per m3',
    expected: 1.527,
    tolerance: 0.005,
    kind: 'C',
    source: 'calc',
    compute: () => unwrap(waterKgPerM3OfGas({ fuel: G20, state: EN_437_STATE })),
  },
  {
    id: 'WAT-03',
    inputs: 'natural gas, 100 kBtu/h HHV input',
    quantity: 'theoretical max, US gal/h',
    expected: 1.1,
    tolerance: 0.04,
    kind: 'P',
    source: 'S30 trade note [B]',
    compute: () => usGallonsPerHourAt100Mbh(G20, 1),
  },
  {
    id: 'WAT-04',
    inputs: 'propane, 100 kBtu/h HHV',
    quantity: 'theoretical max, US gal/h',
    expected: 0.907,
    tolerance: 0.005,
    kind: 'C',
    source: 'calc',
    compute: () => usGallonsPerHourAt100Mbh(G31, 1),
  },
  {
    id: 'WAT-05',
    inputs: 'G20, CND-01 state (40 °C)',
    quantity: 'at 56.7 % condensed, US gal/h per 100 kBtu/h',
    expected: 0.64,
    tolerance: 0.01,
    kind: 'C',
    source: 'calc',
    compute: () => usGallonsPerHourAt100Mbh(G20, condensedAt40C()),
  },
  {
    id: 'WAT-06',
    inputs: 'heating oil, per litre (0.845 kg/L)',
    quantity: 'theoretical max, L/L',
    expected: 0.9,
    tolerance: 0.08,
    kind: 'P',
    source: 'S30 [B]',
    compute: () => 0.845 * waterKgPerKgOfOil(OIL_2),
  },
  {
    id: 'WAT-07',
    inputs: 'G20',
    quantity: 'kg per kWh LHV',
    expected: 0.1616,
    tolerance: 0.0005,
    kind: 'C',
    source: 'calc',
    compute: () => unwrap(condensateKgPerKwh({ fuel: G20, basis: 'net', condensedFraction: 1 })),
  },
  {
    id: 'WAT-08',
    inputs: 'natural gas, theoretical air per 1000 Btu',
    quantity: 'air volume, ft3 (rule of thumb: 10)',
    expected: 9.43,
    tolerance: 0.03,
    kind: 'C',
    source: 'calc',
    compute: () => airFt3Per1000Btu(G20),
  },
];

describeCheckRows('condensate and combustion air (WAT)', rows, { published: 3, computed: 5 });
