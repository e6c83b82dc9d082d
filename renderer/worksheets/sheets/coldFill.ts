/** The pressure to fill a cold system to, and how far below the relief valve it stays. */
import { coldFillPressure, heightServed } from '../../../domain/hydronics/pressure/coldFillPressure.ts';
import { PRESSURE_CUSTOMS, type PressurePractice } from '../../../domain/hydronics/pressure/pressureCustoms.ts';
import { highestNormalHotPressure, reliefHeadroom } from '../../../domain/hydronics/pressure/reliefHeadroom.ts';
import { METRIC_RULE_BAR_PER_M, US_RULE_BAR_PER_M } from '../../../domain/hydronics/pressure/staticGradient.ts';
import { preChargeToSet } from '../../../domain/hydronics/vessel/preCharge.ts';
import { ok } from '../../../domain/result.ts';
import { number, reading } from '../core/fields.ts';
import { numberLine, rangeLine, wordsLine } from '../core/line.ts';
import { LENGTH, SYSTEM_PRESSURE } from '../core/measures.ts';
import { between, type UsualRow } from '../core/usual.ts';
import { said, work } from '../core/worked.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { PRACTICES, practiceField } from './practiceChoice.ts';

const GRADIENTS = { europe: METRIC_RULE_BAR_PER_M, 'north-america': US_RULE_BAR_PER_M } as const;

function usualPressures(practice: PressurePractice): readonly UsualRow[] {
  const { marginBar, marginBasis, usualColdFillBarG, coldFillBasis, reliefSettingBarG, reliefBasis } =
    PRESSURE_CUSTOMS[practice];
  return [
    [`Left over at the top, ${PRACTICES[practice]}`, marginBar.usual, marginBasis] as const,
    [`Cold fill, ${PRACTICES[practice]}`, usualColdFillBarG, coldFillBasis] as const,
    [`Relief setting, ${PRACTICES[practice]}`, [reliefSettingBarG, reliefSettingBarG], reliefBasis] as const,
  ].map(([label, range, basis]) => ({ label, figures: [between(SYSTEM_PRESSURE, range)], notes: [basis] }));
}

export const coldFill = defineWorksheet({
  key: 'cold-fill',
  title: 'Cold fill and relief headroom',
  answers: 'Fill pressure from the height, the pre-charge that goes with it, and the room below the relief valve.',
  group: 'Water side',
  caution: 'Hot water under pressure scalds. Let it cool and take the pressure off before anything is opened.',
  fields: {
    practice: practiceField,
    systemHeightM: reading('systemHeightM', {
      help: 'From the gauge to the highest water: not the building’s height, not the pump’s head.',
    }),
    marginBar: number('Left over at the top', SYSTEM_PRESSURE, [0, 5], { usual: { metric: '0.3', us: '4' } }),
    reliefSettingBarG: reading('reliefSettingBarG', { usual: { metric: '3', us: '30' } }),
    systemPressureBarG: reading('systemPressureBarG', {
      label: 'Pressure on the gauge',
      points: ['cold', 'static', null],
      alsoCalled: ['pressureBarG', 'fillPressureBarG'],
      help: 'If there is one to compare.',
    }),
  },
  workOut({ practice, systemHeightM, marginBar, reliefSettingBarG, systemPressureBarG }) {
    const gradientBarPerM = GRADIENTS[practice];
    const fill = work({ systemHeightM, marginBar }, (known) => coldFillPressure({ ...known, gradientBarPerM }));
    const highest = work({ reliefSettingBarG }, (known) => highestNormalHotPressure({ ...known, practice }));
    const standing = work({ systemPressureBarG, reliefSettingBarG }, (known) =>
      reliefHeadroom({
        pressureBarG: known.systemPressureBarG,
        reliefSettingBarG: known.reliefSettingBarG,
        practice,
      }),
    );
    return {
      lines: [
        numberLine('Cold fill', SYSTEM_PRESSURE, fill, { main: true }),
        rangeLine(
          'Pre-charge to set, vessel empty of water',
          SYSTEM_PRESSURE,
          work({ fill, systemHeightM }, (known) => {
            const set = preChargeToSet({
              staticPressureBar: known.systemHeightM * gradientBarPerM,
              coldFillBarG: known.fill,
              practice,
            });
            if (!set.ok) return set;
            const { leastBarG, mostBarG } = set.value;
            // A hair of room: the margin may be exactly what the two rules need.
            return leastBarG > mostBarG + 1e-9
              ? said('the fill leaves less than 0.4 bar over the height, which a pre-charge between the two needs')
              : ok([leastBarG, mostBarG] as const);
          }),
        ),
        numberLine('Highest normal hot pressure', SYSTEM_PRESSURE, highest, { main: true }),
        numberLine(
          'From cold fill up to there',
          SYSTEM_PRESSURE,
          work({ fill, highest }, (known) => ok(known.highest - known.fill)),
        ),
        numberLine(
          'From the gauge up to the relief setting',
          SYSTEM_PRESSURE,
          work({ standing }, (known) => ok(known.standing.headroomBar)),
          { extra: true },
        ),
        wordsLine(
          'The gauge stands',
          work({ standing }, (known) => ok(POSITIONS[known.standing.position])),
          { extra: true },
        ),
        numberLine(
          'Height the gauge’s pressure serves',
          LENGTH,
          work({ systemPressureBarG, marginBar }, (known) =>
            heightServed({
              fillPressureBarG: known.systemPressureBarG,
              marginBar: known.marginBar,
              gradientBarPerM,
            }),
          ),
          { extra: true },
        ),
      ],
    };
  },
  formula: [
    'cold fill = height · gradient + margin; gradient 0.1 bar/m (Europe) or 0.433 psi/ft (North America)',
    'highest normal hot pressure: setting − 0.5 bar, above 5 bar setting − 10 % (Europe); 90 % of the setting (North America)',
    'pre-charge: pressure of the height + 0.2 bar up to cold fill − 0.2 bar (Europe); the cold fill itself (North America)',
  ],
  valid: [
    'Closed systems, water below 100 °C (212 °F). Altitude changes nothing here. The metric gradient is rounded up by 2 %, which is the safe side.',
    `Usual cold fill: ${PRESSURE_CUSTOMS.europe.usualColdFillBarG.join('–')} bar in Europe, 12 psi in North America. The maker’s sheet wins.`,
  ],
  usual: [
    {
      title: 'Customary pressures',
      columns: ['Gauge'],
      rows: [...usualPressures('europe'), ...usualPressures('north-america')],
    },
  ],
  source: [
    'Hydrostatics. Margins: common practice (Europe, no source); trade training pages on cold static fill (North America).',
    'Highest hot pressure: German trade note on end pressure; ASHRAE HVAC Systems and Equipment, hydronic chapter. Pre-charge: EN 12828, from memory.',
  ],
});

const POSITIONS = {
  within: { words: 'within normal running', tone: 'good' },
  'near-the-edge': { words: 'near the edge of the relief valve', tone: 'doubt' },
  outside: { words: 'above the highest normal hot pressure', tone: 'bad' },
} as const;
