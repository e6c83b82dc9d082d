/** Whether a boiler condenses: its return against the dew point of its flue gas. */
import { lambdaFromCo2, lambdaFromO2 } from '../../../domain/combustion/airRatio.ts';
import { flueDewPointC } from '../../../domain/combustion/dewPoint.ts';
import { CONDENSING_RETURN_RULE_C, condensingCheck } from '../../../domain/hydronics/condensing/condensingCheck.ts';
import { ok } from '../../../domain/result.ts';
import { curveOver } from '../chart/chart.ts';
import { number, reading } from '../core/fields.ts';
import { numberLine, wordsLine } from '../core/line.ts';
import { LAMBDA, PERCENT_FINE, TEMPERATURE, TEMPERATURE_DIFFERENCE } from '../core/measures.ts';
import { firstTyped, work } from '../core/worked.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { airPressureKpaAbs, altitudeField } from './airFields.ts';
import { FUELS, fuelField } from './fuelChoice.ts';

export const condensing = defineWorksheet({
  key: 'condensing',
  title: 'Return against the dew point',
  answers: 'Whether the boiler condenses at this return, and by how much it misses.',
  group: 'Water side',
  fields: {
    fuel: fuelField,
    o2DryVolPct: reading('o2DryVolPct', { help: 'Either O₂ or CO₂ is enough.' }),
    co2DryVolPct: reading('co2DryVolPct'),
    returnC: reading('returnC'),
    intakeAirC: reading('intakeAirC', { usual: { metric: '20', us: '68' }, alsoCalled: ['airC'] }),
    airRelativeHumidityPct: number('Humidity of that air', PERCENT_FINE, [0, 100], {
      usual: '0',
      alsoCalled: ['relativeHumidityPct'],
      help: '0 for dry air; humid air raises the dew point by 1–2 K.',
    }),
    altitudeM: altitudeField,
  },
  workOut(given) {
    const fuel = FUELS[given.fuel];
    const { o2DryVolPct, co2DryVolPct, returnC, intakeAirC, airRelativeHumidityPct } = given;
    const lambda = firstTyped(
      'O₂ or CO₂',
      work({ o2DryVolPct }, (known) => lambdaFromO2({ fuel, ...known })),
      work({ co2DryVolPct }, (known) => lambdaFromCo2({ fuel, ...known })),
    );
    const air = work({ intakeAirC, airRelativeHumidityPct, pressureKpaAbs: airPressureKpaAbs(given.altitudeM) }, ok);
    const dewPoint = work({ lambda, air }, (known) => dewPointAt(given.fuel, known.lambda, known.air));
    const check = work({ returnC, dewPoint }, (known) =>
      condensingCheck({ returnC: known.returnC, dewPointC: known.dewPoint }),
    );
    return {
      lines: [
        numberLine('Flue-gas dew point', TEMPERATURE, dewPoint, { main: true }),
        numberLine('Air ratio λ', LAMBDA, lambda),
        numberLine(
          'Dew point minus return',
          TEMPERATURE_DIFFERENCE,
          work({ check }, (known) => ok(known.check.marginK)),
        ),
        wordsLine(
          'At this return it',
          work({ check }, ({ check: { isCondensing, isGainUseful } }) =>
            ok(
              !isCondensing
                ? ({ words: 'does not condense', tone: 'doubt' } as const)
                : isGainUseful
                  ? ({ words: 'condenses, with a useful gain', tone: 'good' } as const)
                  : ({
                      words: 'condenses, but hardly: the gain comes from 50 °C (122 °F) down',
                      tone: 'plain',
                    } as const),
            ),
          ),
          { main: true },
        ),
      ],
      chart: air.ok
        ? {
            title: 'Dew point against excess air',
            x: { label: 'Air ratio λ', measure: LAMBDA },
            y: { label: 'Dew point', measure: TEMPERATURE },
            curves: [
              ...(returnC.ok
                ? [
                    {
                      label: 'return',
                      points: [[1, returnC.value] as const, [2, returnC.value] as const],
                      weight: 'bound' as const,
                    },
                  ]
                : []),
              {
                label: 'dew point',
                points: curveOver(1, 2, (at) => dewPointAt(given.fuel, at, air.value), 40),
                weight: 'main' as const,
              },
            ],
            marks:
              lambda.ok && dewPoint.ok && lambda.value <= 2
                ? [{ label: 'now', at: [lambda.value, dewPoint.value] }]
                : [],
          }
        : null,
    };
  },
  formula: [
    'share of vapour = water / (water + dry flue + (λ − 1) · air); dew point = boiling point at that share of the air pressure',
  ],
  valid: [
    'λ 1–4; air 0–60 °C when its humidity counts. It falls about 4 K per 5000 ft of altitude.',
    'It is the return that decides, not the supply. For oil the acid dew point lies far higher: never cool down to this figure.',
    `Rule of thumb for natural gas: ${CONDENSING_RETURN_RULE_C} °C (130 °F).`,
  ],
  source: [
    'IAPWS R7-97(2012) region 4 and mass balance. Useful gain from a return of 45–50 °C down: common practice, no source.',
  ],
});

function dewPointAt(
  fuel: keyof typeof FUELS,
  lambda: number,
  air: { readonly intakeAirC: number; readonly airRelativeHumidityPct: number; readonly pressureKpaAbs: number },
) {
  return flueDewPointC({
    fuel: FUELS[fuel],
    lambda,
    pressureKpaAbs: air.pressureKpaAbs,
    air: { airC: air.intakeAirC, relativeHumidityPct: air.airRelativeHumidityPct },
  });
}
