/** What an appliance may burn at an altitude. */
import { altitudeMultiplier, siteRatingKw } from '../../../domain/gas/altitudeRule.ts';
import { standardAtmosphere } from '../../../domain/gas/standardAtmosphere.ts';
import { boilingPoint } from '../../../domain/hydronics/fluid/boilingPoint.ts';
import { ok } from '../../../domain/result.ts';
import { reading } from '../core/fields.ts';
import { numberLine } from '../core/line.ts';
import { ABSOLUTE_PRESSURE, PERCENT_FINE, POWER, TEMPERATURE } from '../core/measures.ts';
import { work } from '../core/worked.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { ALTITUDE_RULES, altitudeRuleField } from './altitudeRuleChoice.ts';

export const altitude = defineWorksheet({
  key: 'altitude',
  title: 'Rating at altitude',
  answers: 'The rating a clocked input is held against, and the air pressure there.',
  group: 'Gas',
  caution: 'Orifices and settings for altitude are the maker’s and a licensed person’s business. Never derate twice.',
  fields: {
    altitudeM: reading('altitudeM', { alsoCalled: ['elevationM'] }),
    ratedInputKw: reading('ratedInputKw', { help: 'From the plate, at sea level.' }),
    altitudeRule: altitudeRuleField,
  },
  workOut({ altitudeM, ratedInputKw, altitudeRule }) {
    const rule = ALTITUDE_RULES[altitudeRule];
    const air = work({ altitudeM }, (known) => standardAtmosphere({ elevationM: known.altitudeM }));
    return {
      lines: [
        numberLine(
          'Rating at this altitude',
          POWER,
          work({ altitudeM, ratedInputKw }, (known) =>
            siteRatingKw({ rule, ratedInputKw: known.ratedInputKw, elevationM: known.altitudeM }),
          ),
          { main: true },
        ),
        numberLine(
          'Share of the plate rating',
          PERCENT_FINE,
          work({ altitudeM }, (known) => {
            const multiplier = altitudeMultiplier({ rule, elevationM: known.altitudeM });
            return multiplier.ok ? ok(100 * multiplier.value) : multiplier;
          }),
        ),
        numberLine(
          'Mean air pressure',
          ABSOLUTE_PRESSURE,
          work({ air }, (known) => ok(known.air.pressureKpaAbs)),
        ),
        numberLine(
          'Water in an open pan boils at',
          TEMPERATURE,
          work({ air }, (known) =>
            boilingPoint({ gaugePressureBarG: 0, atmosphericPressureKpaAbs: known.air.pressureKpaAbs }),
          ),
        ),
      ],
    };
  },
  formula: [
    'share = 1 − 4 % per 1000 ft above 2000 ft; counted from sea level or from 2000 ft, as the sheet says',
    'air pressure = 101.325 kPa · (1 − 2.25577·10⁻⁵ · altitude in m)^5.25588',
  ],
  valid: [
    'Plate and manual come first: many fan-assisted and premix boilers need no derate.',
    'A “high-altitude gas” of lower heating value may hold the derate already: apply it once.',
    'The real barometer varies by about ±3 % around the mean. Air pressure moves no gauge pressure of a heating system.',
  ],
  source: [
    'NFPA 54/ANSI Z223.1 and the Canadian rule as appliance texts quote them; both countings are in print.',
    'US Standard Atmosphere 1976; boiling point IAPWS R7-97(2012).',
  ],
});
