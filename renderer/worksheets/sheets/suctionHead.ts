/** How far the water at a pump's suction is from boiling. */
import { boilingPoint } from '../../../domain/hydronics/fluid/boilingPoint.ts';
import { netPositiveSuctionHead } from '../../../domain/hydronics/pressure/netPositiveSuctionHead.ts';
import { CIRCULATOR_INLET_MINIMUM } from '../../../domain/hydronics/pressure/pressureCustoms.ts';
import { ok } from '../../../domain/result.ts';
import { number } from '../core/fields.ts';
import { numberLine, wordsLine } from '../core/line.ts';
import { LENGTH, SYSTEM_PRESSURE, TEMPERATURE, TEMPERATURE_DIFFERENCE, WHOLE_TEMPERATURE } from '../core/measures.ts';
import { atLeast, exactly } from '../core/usual.ts';
import { work } from '../core/worked.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { airPressureKpaAbs, altitudeField } from './airFields.ts';

export const suctionHead = defineWorksheet({
  key: 'suction-head',
  title: 'Suction head of a pump (NPSH)',
  answers: 'Head left at the suction before the water boils, and the boiling point at that pressure.',
  group: 'Water side',
  caution: 'Water above 100 °C (212 °F) flashes to steam when its pressure goes. Let it cool first.',
  fields: {
    waterC: number('Water at the suction', TEMPERATURE, [-10, 130], { alsoCalled: ['temperatureC'] }),
    suctionBarG: number('Gauge at the suction', SYSTEM_PRESSURE, [-1, 25], { alsoCalled: ['gaugePressureBarG'] }),
    suctionLossM: number('Lost between gauge and pump', LENGTH, [0, 200], {
      usual: '0',
      help: 'In metres or feet of water.',
    }),
    altitudeM: altitudeField,
  },
  workOut({ waterC, suctionBarG, suctionLossM, altitudeM }) {
    const atmosphericPressureKpaAbs = airPressureKpaAbs(altitudeM);
    const head = work({ waterC, suctionBarG, suctionLossM, atmosphericPressureKpaAbs }, netPositiveSuctionHead);
    const boils = work({ suctionBarG, atmosphericPressureKpaAbs }, (known) =>
      boilingPoint({
        gaugePressureBarG: known.suctionBarG,
        atmosphericPressureKpaAbs: known.atmosphericPressureKpaAbs,
      }),
    );
    return {
      lines: [
        numberLine('Suction head available, of water', { ...LENGTH, decimals: 1 }, head, { main: true }),
        wordsLine(
          'At the suction the water',
          work({ head }, (known) =>
            ok(
              known.head > 0
                ? ({ words: 'stays liquid; the pump’s sheet says how much head it needs', tone: 'plain' } as const)
                : ({ words: 'boils', tone: 'bad' } as const),
            ),
          ),
        ),
        numberLine('It boils there at', TEMPERATURE, boils, { main: true }),
        numberLine(
          'Still to go',
          TEMPERATURE_DIFFERENCE,
          work({ boils, waterC }, (known) => ok(known.boils - known.waterC)),
        ),
      ],
    };
  },
  formula: ['head = (air pressure + gauge − vapour pressure) / (ρ · g) − loss'],
  valid: ['Water 0–120 °C (248 °F), −1 to 20 bar gauge. Altitude counts here, through the air pressure.'],
  usual: [
    {
      title: 'What a domestic circulator wants at its inlet',
      columns: ['Water', 'Gauge at the inlet'],
      rows: CIRCULATOR_INLET_MINIMUM.map(({ waterC, inletBarG }) => ({
        label: waterC > 90 ? 'Hottest' : 'Usual',
        figures: [exactly(WHOLE_TEMPERATURE, waterC), atLeast(SYSTEM_PRESSURE, inletBarG)],
        notes: ['common practice, from memory', 'the pump’s own sheet wins'],
      })),
    },
  ],
  source: ['Definition; IAPWS R7-97(2012); US Standard Atmosphere 1976.'],
});
