/** Standard pressure and altitude rules. Sources by code in ../README.md. */
import {
  altitudeMultiplier,
  CANADA_ALTITUDE_RULE,
  siteRatingKw,
  US_COMMON_ALTITUDE_RULE,
} from '../../../domain/gas/altitudeRule.ts';
import { standardAtmosphere } from '../../../domain/gas/standardAtmosphere.ts';
import { btuPerHToKw, feetToMetres, kpaToInHg, kpaToPsi, kwToBtuPerH } from '../../../domain/quantity/conversions.ts';
import { unwrap } from '../../../domain/result.ts';
import { type CheckRow, describeCheckRows } from '../checkRow.ts';

function standardKpa(elevationM: number): number {
  return unwrap(standardAtmosphere({ elevationM })).pressureKpaAbs;
}

function usMultiplier(elevationFt: number): number {
  return unwrap(altitudeMultiplier({ rule: US_COMMON_ALTITUDE_RULE, elevationM: feetToMetres(elevationFt) }));
}

function canadianRatingBtuPerH(ratedBtuPerH: number, elevationFt: number): number {
  return kwToBtuPerH(
    unwrap(
      siteRatingKw({
        ratedInputKw: btuPerHToKw(ratedBtuPerH),
        rule: CANADA_ALTITUDE_RULE,
        elevationM: feetToMetres(elevationFt),
      }),
    ),
  );
}

const rows: readonly CheckRow[] = [
  {
    id: 'ALT-01',
    inputs: '1,000 ft',
    quantity: 'standard pressure, psia',
    expected: 14.175,
    tolerance: 0.004,
    kind: 'P',
    source: 'S15 table [B]',
    compute: () => kpaToPsi(standardKpa(feetToMetres(1000))),
  },
  {
    id: 'ALT-02',
    inputs: '2,000 ft',
    quantity: 'standard pressure, psia',
    expected: 13.664,
    tolerance: 0.002,
    kind: 'P',
    source: 'S15 [B]',
    compute: () => kpaToPsi(standardKpa(feetToMetres(2000))),
  },
  {
    id: 'ALT-03',
    inputs: '5,000 ft',
    quantity: 'standard pressure, psia',
    expected: 12.23,
    tolerance: 0.004,
    kind: 'P',
    source: 'S15 [B]',
    compute: () => kpaToPsi(standardKpa(feetToMetres(5000))),
  },
  {
    id: 'ALT-04',
    inputs: '10,000 ft',
    quantity: 'standard pressure, psia',
    expected: 10.108,
    tolerance: 0.003,
    kind: 'P',
    source: 'S15 [B]',
    compute: () => kpaToPsi(standardKpa(feetToMetres(10_000))),
  },
  {
    id: 'ALT-05',
    inputs: '1500 m',
    quantity: 'standard pressure, kPa',
    expected: 84.556,
    tolerance: 0.01,
    kind: 'C',
    source: 'calc',
    compute: () => standardKpa(1500),
  },
  {
    id: 'ALT-06',
    inputs: '6000 ft',
    quantity: 'standard pressure, inHg',
    expected: 23.98,
    tolerance: 0.02,
    kind: 'P',
    source: 'S15 second table [B]',
    compute: () => kpaToInHg(standardKpa(feetToMetres(6000))),
  },
  {
    id: 'ALT-07',
    inputs: '3000 ft, US 4 %/1000 ft from sea level',
    quantity: 'input multiplier',
    expected: 0.88,
    tolerance: 0.001,
    kind: 'C',
    source: 'S29 rule [B]',
    compute: () => usMultiplier(3000),
  },
  {
    id: 'ALT-08',
    inputs: '5000 ft, same',
    quantity: 'input multiplier',
    expected: 0.8,
    tolerance: 0.001,
    kind: 'C',
    source: 'S29 rule [B]',
    compute: () => usMultiplier(5000),
  },
  {
    id: 'ALT-09',
    inputs: '1900 ft, same (threshold 2000 ft)',
    quantity: 'input multiplier',
    expected: 1,
    tolerance: 0.001,
    kind: 'C',
    source: 'S29 rule [B]',
    compute: () => usMultiplier(1900),
  },
  {
    id: 'ALT-10',
    inputs: '88,000 Btu/h at 4300 ft, Canada 10 % (2000–4500 ft)',
    quantity: 'derated input, Btu/h',
    expected: 79200,
    tolerance: 1,
    kind: 'P',
    source: 'S29 worked case [B]',
    compute: () => canadianRatingBtuPerH(88_000, 4300),
  },
];

describeCheckRows('altitude (ALT)', rows, { published: 6, computed: 4 });
