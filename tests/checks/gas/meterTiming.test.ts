/** Gas rate, volume factor and input by timing the meter. Sources by code in ../README.md. */
import { gasInput, netInputFromGross } from '../../../domain/gas/gasInput.ts';
import { meteredRate } from '../../../domain/gas/meterTiming.ts';
import { standardAtmosphere } from '../../../domain/gas/standardAtmosphere.ts';
import { volumeFactor } from '../../../domain/gas/volumeFactor.ts';
import {
  btuPerFt3ToMjPerM3,
  cubicFeetToCubicMetres,
  cubicMetresToCubicFeet,
  fahrenheitToCelsius,
  inWcToMbar,
  kwToMbh,
  psiToKpa,
} from '../../../domain/quantity/conversions.ts';
import { unwrap } from '../../../domain/result.ts';
import { type CheckRow, describeCheckRows } from '../checkRow.ts';

function cubicFeetPerHour(dialFt3: number, turns: number, elapsedS: number): number {
  const rate = unwrap(meteredRate({ dialM3: cubicFeetToCubicMetres(dialFt3), turns, elapsedS }));
  return cubicMetresToCubicFeet(rate.rateM3PerH);
}

function ukGrossInputKw(): number {
  return unwrap(
    gasInput({
      timing: { dialM3: 0.088, turns: 1, elapsedS: 122 },
      volumeFactor: 1,
      heatingValueMjPerM3: 10.76 * 3.6,
      basis: 'gross',
    }),
  ).inputKw;
}

function usVolumeFactor(barometerPsia: number, gasF: number): number {
  return unwrap(
    volumeFactor({
      gas: {
        barometerKpaAbs: psiToKpa(barometerPsia),
        pressureMbarG: inWcToMbar(7),
        temperatureC: fahrenheitToCelsius(gasF),
      },
      compensation: { kind: 'none' },
      base: { kind: 'at-base', baseC: fahrenheitToCelsius(60), baseKpaAbs: psiToKpa(14.73) },
    }),
  );
}

function europeanVolumeFactor(barometerKpaAbs: number, pressureMbarG: number, temperatureC: number): number {
  return unwrap(
    volumeFactor({
      gas: { barometerKpaAbs, pressureMbarG, temperatureC },
      compensation: { kind: 'none' },
      base: { kind: 'at-base', baseC: 15, baseKpaAbs: 101.325 },
    }),
  );
}

function inputAt5000FtMbh(): number {
  return kwToMbh(
    unwrap(
      gasInput({
        timing: { dialM3: cubicFeetToCubicMetres(1), turns: 1, elapsedS: 36 },
        volumeFactor: usVolumeFactor(12.228, 60),
        heatingValueMjPerM3: btuPerFt3ToMjPerM3(1036),
        basis: 'gross',
      }),
    ).inputKw,
  );
}

const rows: readonly CheckRow[] = [
  {
    id: 'GAS-01',
    inputs: '½ ft3 dial, 22 s/rev',
    quantity: 'rate, cfh',
    expected: 81.82,
    tolerance: 0.05,
    kind: 'P',
    source: 'S28 [B]',
    compute: () => cubicFeetPerHour(0.5, 1, 22),
  },
  {
    id: 'GAS-02',
    inputs: '2 ft3 dial, 60 s/rev',
    quantity: 'rate, cfh',
    expected: 120,
    tolerance: 0.05,
    kind: 'P',
    source: 'S28 quoting NFGC handbook [B]',
    compute: () => cubicFeetPerHour(2, 1, 60),
  },
  {
    id: 'GAS-03',
    inputs: '1 ft3 dial, 30 s/rev',
    quantity: 'rate, cfh',
    expected: 120,
    tolerance: 0.5,
    kind: 'P',
    source: 'S28 table [B]',
    compute: () => cubicFeetPerHour(1, 1, 30),
  },
  {
    id: 'GAS-04',
    inputs: '1 ft3 dial, 36 s/rev',
    quantity: 'rate, cfh',
    expected: 100,
    tolerance: 0.5,
    kind: 'P',
    source: 'S28 table [B]',
    compute: () => cubicFeetPerHour(1, 1, 36),
  },
  {
    id: 'GAS-05',
    inputs: '1 ft3 dial, 48 s/rev',
    quantity: 'rate, cfh',
    expected: 75,
    tolerance: 0.5,
    kind: 'P',
    source: 'S28 table [B]',
    compute: () => cubicFeetPerHour(1, 1, 48),
  },
  {
    id: 'GAS-06',
    inputs: '1 ft3 dial, 72 s/rev',
    quantity: 'rate, cfh',
    expected: 50,
    tolerance: 0.5,
    kind: 'P',
    source: 'S28 table [B]',
    compute: () => cubicFeetPerHour(1, 1, 72),
  },
  {
    id: 'GAS-07',
    inputs: '1 ft3 dial, 80 s/rev',
    quantity: 'rate, cfh',
    expected: 45,
    tolerance: 0.5,
    kind: 'P',
    source: 'S28 table [B]',
    compute: () => cubicFeetPerHour(1, 1, 80),
  },
  {
    id: 'GAS-08',
    inputs: '1 ft3 dial, 2 rev in 70 s',
    quantity: 'rate, cfh',
    expected: 102.86,
    tolerance: 0.1,
    kind: 'P',
    source: 'S28 (prints 102.8) [B]',
    compute: () => cubicFeetPerHour(1, 2, 70),
  },
  {
    id: 'GAS-09',
    inputs: '0.01 m3 dial, 16 s/rev',
    quantity: 'rate, cfh (2.25 m3/h)',
    expected: 79.5,
    tolerance: 0.1,
    kind: 'C',
    source: 'calc',
    compute: () => cubicMetresToCubicFeet(unwrap(meteredRate({ dialM3: 0.01, turns: 1, elapsedS: 16 })).rateM3PerH),
  },
  {
    id: 'GAS-10',
    inputs: '0.088 m3 in 122 s, 10.76 kWh/m3 gross',
    quantity: 'heat input gross, kW',
    expected: 27.94,
    tolerance: 0.02,
    kind: 'P',
    source: 'S28 UK note [B]',
    compute: () => ukGrossInputKw(),
  },
  {
    id: 'GAS-11',
    inputs: 'same ÷ 1.11',
    quantity: 'heat input net, kW',
    expected: 25.17,
    tolerance: 0.02,
    kind: 'P',
    source: 'S28 UK note [B]',
    compute: () => unwrap(netInputFromGross({ inputKwGross: ukGrossInputKw(), netToGrossRatio: 1 / 1.11 })),
  },
  {
    id: 'GAS-12',
    inputs: '7 in w.c., 14.696 psia, 60 °F → 14.73 psia, 60 °F',
    quantity: 'volume factor',
    expected: 1.0149,
    tolerance: 0.0005,
    kind: 'C',
    source: 'calc',
    compute: () => usVolumeFactor(14.696, 60),
  },
  {
    id: 'GAS-13',
    inputs: 'same but 40 °F gas',
    quantity: 'volume factor',
    expected: 1.0555,
    tolerance: 0.0005,
    kind: 'C',
    source: 'calc',
    compute: () => usVolumeFactor(14.696, 40),
  },
  {
    id: 'GAS-14',
    inputs: '5000 ft (12.228 psia), 7 in, 60 °F → 14.73 psia',
    quantity: 'volume factor',
    expected: 0.8473,
    tolerance: 0.0005,
    kind: 'C',
    source: 'calc',
    compute: () => usVolumeFactor(12.228, 60),
  },
  {
    id: 'GAS-15',
    inputs: '20 mbar, 1013.25 mbar, 10 °C → 15 °C 1013.25',
    quantity: 'volume factor',
    expected: 1.0377,
    tolerance: 0.0005,
    kind: 'C',
    source: 'calc',
    compute: () => europeanVolumeFactor(101.325, 20, 10),
  },
  {
    id: 'GAS-16',
    inputs: 'UK fixed billing factor vs 21 mbar, 12.2 °C, ~66 m',
    quantity: 'volume factor',
    expected: 1.02264,
    tolerance: 0.001,
    kind: 'P',
    source: 'UK billing practice [B]',
    fromMemory: true,
    compute: () => europeanVolumeFactor(unwrap(standardAtmosphere({ elevationM: 66 })).pressureKpaAbs, 21, 12.2),
  },
  {
    id: 'GAS-17',
    inputs: '1 ft3 dial 36 s; 12.228 psia; 7 in; 60 °F; 1036 Btu/scf @14.73',
    quantity: 'heat input HHV, kBtu/h (25.7 kW)',
    expected: 87.8,
    tolerance: 0.2,
    kind: 'C',
    source: 'calc',
    compute: () => inputAt5000FtMbh(),
  },
  {
    id: 'GAS-18',
    inputs: '1040 Btu/ft3 ↔ MJ/m3',
    quantity: 'calorific value, MJ/m3',
    expected: 38.75,
    tolerance: 0.01,
    kind: 'C',
    source: 'calc',
    compute: () => btuPerFt3ToMjPerM3(1040),
  },
];

describeCheckRows('meter timing (GAS)', rows, { published: 11, computed: 7 });
