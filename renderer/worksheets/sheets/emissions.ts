/** CO and NOx brought to a reference O₂ and into mass. */
import {
  type HeatBasis,
  mgPerKwhFromPpm,
  mgPerM3FromPpm,
  type Pollutant,
  ppmFromMgPerKwh,
} from '../../../domain/combustion/emissionMass.ts';
import { fFactors, lbPerMmbtuFromPpm } from '../../../domain/combustion/fFactors.ts';
import { atReferenceOxygen, type ReferenceOxygenBase } from '../../../domain/combustion/referenceOxygen.ts';
import { choice, number, reading } from '../core/fields.ts';
import { numberLine } from '../core/line.ts';
import { LB_PER_MMBTU, MG_PER_KWH, MG_PER_M3, PERCENT_FINE, PPM } from '../core/measures.ts';
import { work } from '../core/worked.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { FUELS, fuelField } from './fuelChoice.ts';

const POLLUTANTS: Readonly<Record<Pollutant, string>> = { nox: 'NOx, as NO₂', co: 'CO' };
const BASES: Readonly<Record<ReferenceOxygenBase, string>> = {
  '20.9': '20.9 % (US)',
  '21': '21 % (Germany, Flanders)',
};
const HEAT: Readonly<Record<HeatBasis, string>> = { net: 'net (LHV)', gross: 'gross (HHV)' };

export const emissions = defineWorksheet({
  key: 'emissions',
  title: 'NOx and CO conversions',
  answers: 'A reading in ppm at a reference O₂, per cubic metre and per kWh, and a limit turned back into ppm.',
  group: 'Burner and flue',
  caution: 'Carbon monoxide kills: a legal figure that is met says nothing about the room.',
  fields: {
    fuel: fuelField,
    pollutant: choice('Of', POLLUTANTS, 'nox'),
    ppmDry: number('Measured dry', PPM, [0, 100_000]),
    o2DryVolPct: reading('o2DryVolPct', { label: 'O₂ measured beside it' }),
    referenceO2DryVolPct: number('Reference O₂', PERCENT_FINE, [0, 20], { usual: '3' }),
    base: choice('O₂ of air by the rule', BASES, { metric: '21', us: '20.9' }),
    heatBasis: choice('Per kWh of fuel', HEAT, { metric: 'gross', us: 'gross' }),
    limitMgPerKwh: number('A limit to turn back', MG_PER_KWH, [0, 100_000], {
      alsoCalled: ['mgPerKwh'],
      help: 'If there is one.',
    }),
  },
  workOut({ fuel: fuelKey, pollutant, ppmDry, o2DryVolPct, referenceO2DryVolPct, base, heatBasis, limitMgPerKwh }) {
    const fuel = FUELS[fuelKey];
    const atReference = work({ ppmDry, o2DryVolPct, referenceO2DryVolPct }, (known) =>
      atReferenceOxygen({
        concentration: known.ppmDry,
        o2DryVolPct: known.o2DryVolPct,
        referenceO2DryVolPct: known.referenceO2DryVolPct,
        base,
      }),
    );
    return {
      lines: [
        numberLine('At the reference O₂', PPM_FINE, atReference, { main: true }),
        numberLine(
          'Air-free (0 % O₂)',
          PPM_FINE,
          work({ ppmDry, o2DryVolPct }, (known) =>
            atReferenceOxygen({
              concentration: known.ppmDry,
              o2DryVolPct: known.o2DryVolPct,
              referenceO2DryVolPct: 0,
              base,
            }),
          ),
        ),
        numberLine(
          'Per normal m³ (0 °C) at the reference O₂',
          MG_PER_M3,
          work({ atReference }, (known) => mgPerM3FromPpm({ pollutant, ppmDry: known.atReference, volumeAt: '0 °C' })),
        ),
        numberLine(
          'Per kWh of fuel',
          MG_PER_KWH,
          work({ ppmDry, o2DryVolPct }, (known) => mgPerKwhFromPpm({ fuel, pollutant, basis: heatBasis, ...known })),
          { main: true },
        ),
        numberLine(
          'Per million Btu, gross',
          LB_PER_MMBTU,
          work({ ppmDry, o2DryVolPct }, (known) =>
            lbPerMmbtuFromPpm({ pollutant, fdDscfPerMmbtu: fFactors(fuel).fdDscfPerMmbtu, ...known }),
          ),
        ),
        numberLine(
          'The limit, in ppm at the reference O₂',
          PPM_FINE,
          work({ limitMgPerKwh, referenceO2DryVolPct }, (known) =>
            ppmFromMgPerKwh({
              fuel,
              pollutant,
              basis: heatBasis,
              mgPerKwh: known.limitMgPerKwh,
              o2DryVolPct: known.referenceO2DryVolPct,
            }),
          ),
          { extra: true },
        ),
      ],
    };
  },
  formula: [
    'at reference = measured · (air O₂ − reference O₂) / (air O₂ − O₂)',
    'mg/m³ = ppm · molar mass / molar volume; mg/kWh = mg/m³ at 0 % O₂ · dry flue gas per kWh',
  ],
  valid: [
    'Dry readings, O₂ and reference O₂ 0–15 %. NOx is booked as NO₂; an instrument with an NO cell only reads about 5 % low.',
    'Net and gross differ by 11 % on natural gas: the basis is part of the number.',
  ],
  source: [
    'US EPA Method 20 form (20.9); 1. BImSchV Annex 2 no. 2.2 (21). Composition; agrees with EN 483/EN 15502 factors, from memory.',
    'Per million Btu: 40 CFR 75 App. F factor, with the fuel’s own dry flue volume.',
  ],
});

const PPM_FINE = { ...PPM, decimals: 1 };
