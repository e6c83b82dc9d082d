/** What an analyser's readings say of a burner. */
import { excessAirFromCo2, excessAirFromO2, lambdaFromCo2, lambdaFromO2 } from '../../../domain/combustion/airRatio.ts';
import { coAirFreeFromCo2, coAirFreeFromO2, coToCo2Ratio } from '../../../domain/combustion/coAirFree.ts';
import { combustionAirM3PerH } from '../../../domain/combustion/combustionAir.ts';
import { combustionEfficiency } from '../../../domain/combustion/combustionEfficiency.ts';
import { foPlausibility } from '../../../domain/combustion/foPlausibility.ts';
import type { Fuel, FuelFamily } from '../../../domain/combustion/fuel.ts';
import { co2FromO2, o2FromCo2 } from '../../../domain/combustion/o2Co2.ts';
import { flueLossFromO2, SIEGERT_CONSTANTS, type SiegertConstants } from '../../../domain/combustion/siegert.ts';
import { ok } from '../../../domain/result.ts';
import { number, reading } from '../core/fields.ts';
import { numberLine, wordsLine } from '../core/line.ts';
import { AIR_RATE, LAMBDA, PERCENT_FINE, PLAIN, POWER, PPM, TEMPERATURE } from '../core/measures.ts';
import { firstTyped, isTyped, said, type Worked, work } from '../core/worked.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { airPressureKpaAbs, altitudeField } from './airFields.ts';
import { FUELS, fuelField } from './fuelChoice.ts';
import { o2Co2Chart } from './o2Co2Chart.ts';

export const combustion = defineWorksheet({
  key: 'combustion',
  title: 'Combustion from readings',
  answers: 'Excess air, CO air-free, flue loss, efficiency and dew point from what the analyser shows.',
  group: 'Burner and flue',
  caution:
    'Carbon monoxide kills. High or rising CO in the flue: burner off, then the maker’s manual. No figure here replaces a CO alarm or a reading of the room.',
  fields: {
    fuel: fuelField,
    o2DryVolPct: reading('o2DryVolPct', { help: 'Either O₂ or CO₂ is enough.' }),
    co2DryVolPct: reading('co2DryVolPct'),
    coPpm: reading('coPpm', { alsoCalled: ['coPpmDry'] }),
    flueGasC: reading('flueGasC'),
    intakeAirC: reading('intakeAirC', { alsoCalled: ['airC'] }),
    airRelativeHumidityPct: number('Humidity of that air', PERCENT_FINE, [0, 100], {
      usual: '0',
      alsoCalled: ['relativeHumidityPct'],
      help: '0 for dry air: a little low below the dew point.',
    }),
    altitudeM: altitudeField,
    inputKwGross: number('Gross input', POWER, [0, 10_000], { help: 'For the air the burner must find.' }),
  },
  workOut(given) {
    const fuel = FUELS[given.fuel];
    const { o2DryVolPct, co2DryVolPct, coPpm, flueGasC, intakeAirC, airRelativeHumidityPct } = given;
    const co2ByO2 = work({ o2DryVolPct }, (known) => co2FromO2({ fuel, ...known }));
    const o2ByCo2 = work({ co2DryVolPct }, (known) => o2FromCo2({ fuel, ...known }));
    const o2 = firstTyped('O₂ or CO₂', o2DryVolPct, o2ByCo2);
    const co2 = firstTyped('O₂ or CO₂', co2DryVolPct, co2ByO2);
    const byO2 = work({ o2DryVolPct }, (known) => lambdaFromO2({ fuel, ...known }));
    const byCo2 = work({ co2DryVolPct }, (known) => lambdaFromCo2({ fuel, ...known }));
    const excessByO2 = work({ o2DryVolPct }, (known) => excessAirFromO2({ fuel, ...known }));
    const excessByCo2 = work({ co2DryVolPct }, (known) => excessAirFromCo2({ fuel, ...known }));
    const coByO2 = work({ coPpm, o2 }, (known) => coAirFreeFromO2({ coPpmDry: known.coPpm, o2DryVolPct: known.o2 }));
    const coByCo2 = work({ coPpm, co2: co2DryVolPct }, (known) =>
      coAirFreeFromCo2({ fuel, coPpmDry: known.coPpm, co2DryVolPct: known.co2 }),
    );
    const pressureKpaAbs = airPressureKpaAbs(given.altitudeM);
    const flue = work({ o2, flueGasC, intakeAirC, airRelativeHumidityPct, pressureKpaAbs }, (known) =>
      combustionEfficiency({
        fuel,
        o2DryVolPct: known.o2,
        flueGasC: known.flueGasC,
        airC: known.intakeAirC,
        airRelativeHumidityPct: known.airRelativeHumidityPct,
        pressureKpaAbs: known.pressureKpaAbs,
      }),
    );
    const airM3PerH = work(
      { inputKwGross: given.inputKwGross, lambda: firstTyped('O₂ or CO₂', byO2, byCo2), intakeAirC, pressureKpaAbs },
      (known) =>
        combustionAirM3PerH({
          fuel,
          inputKwGross: known.inputKwGross,
          lambda: known.lambda,
          airC: known.intakeAirC,
          pressureKpaAbs: known.pressureKpaAbs,
        }),
    );
    const siegert = SIEGERT[fuel.family];
    return {
      lines: [
        ...(isTyped(o2DryVolPct) && isTyped(co2DryVolPct)
          ? [wordsLine('O₂ and CO₂ together', pairFits(fuel, given))]
          : isTyped(co2DryVolPct)
            ? [numberLine('O₂ that belongs to this CO₂', PERCENT_FINE, o2)]
            : [numberLine('CO₂ that belongs to this O₂', PERCENT_FINE, co2)]),
        numberLine('Excess air', PERCENT_FINE, firstTyped('O₂ or CO₂', excessByO2, excessByCo2), { main: true }),
        numberLine('Air ratio λ', LAMBDA, firstTyped('O₂ or CO₂', byO2, byCo2)),
        numberLine('CO air-free', PPM, isTyped(co2DryVolPct) && !isTyped(o2DryVolPct) ? coByCo2 : coByO2, {
          main: true,
        }),
        numberLine(
          'CO/CO₂',
          { ...PLAIN, decimals: 4 },
          work({ coPpm, co2 }, (known) => coToCo2Ratio({ coPpmDry: known.coPpm, co2DryVolPct: known.co2 })),
        ),
        numberLine(
          'Flue loss, sensible, on net',
          PERCENT_FINE,
          work({ flue }, (known) => ok(known.flue.sensibleLossPctNet)),
        ),
        numberLine(
          'Efficiency, net',
          PERCENT_FINE,
          work({ flue }, (known) => ok(known.flue.efficiencyNetPct)),
          { main: true },
        ),
        numberLine(
          'Efficiency, gross',
          PERCENT_FINE,
          work({ flue }, (known) => ok(known.flue.efficiencyGrossPct)),
          {
            main: true,
          },
        ),
        numberLine(
          'Fuel’s water condensed, at best',
          PERCENT_FINE,
          work({ flue }, (known) => ok(100 * known.flue.condensedFraction)),
        ),
        numberLine(
          'Flue-gas dew point',
          TEMPERATURE,
          work({ flue }, (known) => ok(known.flue.dewPointC)),
        ),
        numberLine('Air the burner must find', AIR_RATE, isTyped(given.inputKwGross) ? airM3PerH : given.inputKwGross, {
          extra: true,
        }),
        numberLine(
          'Flue loss by the German rule',
          PERCENT_FINE,
          work({ o2, flueGasC, intakeAirC }, (known) =>
            known.flueGasC < NON_CONDENSING_FROM_C
              ? said('the rule is for flue gas that does not condense, 60 °C (140 °F) and hotter')
              : flueLossFromO2({
                  constants: siegert,
                  o2DryVolPct: known.o2,
                  flueGasC: known.flueGasC,
                  airC: known.intakeAirC,
                }),
          ),
        ),
      ],
      chart: o2Co2Chart(given.fuel, o2, co2),
    };
  },
  formula: [
    'CO₂ = CO₂max · (20.946 − O₂) / 20.946',
    'λ = 1 + k · O₂ / (20.946 − O₂); excess air = 100 · (λ − 1)',
    'CO air-free = CO · 20.9 / (20.9 − O₂); with CO₂ alone: CO · CO₂max / CO₂',
    'net efficiency = 100 · (LHV − sensible heat + heat of the water condensed) / LHV; gross = net · LHV / HHV',
    'air = λ · air without excess · input / gross heating value, at the air’s own temperature and pressure',
    'German rule: loss = (flue − air) · (A / (21 − O₂) + B)',
  ],
  valid: [
    'Dry flue gas, complete combustion, lean side: O₂ 0.5–15 %, CO₂ from 3 % to the fuel’s highest; CO below 1000 ppm.',
    'Flue 20–600 °C and not colder than the air.',
    'Below the dew point the efficiency is an upper estimate: measured condensate is the only proof. Casing and standby losses are not in it.',
    'Air is what burns: a room-air appliance needs more for dilution and ventilation, by the local code.',
    'Many analysers work CO₂ out from O₂: such a pair proves the fuel setting, nothing else.',
  ],
  source: [
    'Mass and energy balance; agrees with US DOE Energy Tips – Steam no. 4 (2006) within 0.7 point.',
    'CO air-free: ANSI Z21 family and trade practice. German rule: 1. BImSchV (2010) Annex 2 no. 3.',
    'Dew point: IAPWS R7-97(2012). Pair: US EPA Method 3B; tight band our own judgement.',
  ],
});

const NON_CONDENSING_FROM_C = 60;

const SIEGERT: Readonly<Record<FuelFamily, SiegertConstants>> = {
  'natural-gas': SIEGERT_CONSTANTS['public-network-gas'],
  propane: SIEGERT_CONSTANTS.lpg,
  butane: SIEGERT_CONSTANTS.lpg,
  'distillate-oil': SIEGERT_CONSTANTS['light-heating-oil'],
};

function pairFits(
  fuel: Fuel,
  { o2DryVolPct, co2DryVolPct, coPpm }: Readonly<Record<'o2DryVolPct' | 'co2DryVolPct' | 'coPpm', Worked<number>>>,
) {
  // CO moves the pair by hundredths only; without it the test still holds.
  const co = coPpm.ok ? coPpm : ok(0);
  return work({ o2DryVolPct, co2DryVolPct, co }, (known) => {
    const pair = foPlausibility({
      fuel,
      o2DryVolPct: known.o2DryVolPct,
      co2DryVolPct: known.co2DryVolPct,
      coPpmDry: known.co,
    });
    if (!pair.ok) return pair;
    return ok(
      pair.value.isInsideTightBand
        ? ({ words: 'belong to this fuel', tone: 'good' } as const)
        : ({
            words: 'do not belong to this fuel: swapped, misread, or the analyser on another fuel?',
            tone: 'bad',
          } as const),
    );
  });
}
