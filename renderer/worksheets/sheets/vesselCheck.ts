/** What a vessel that is there does: from its pre-charge to the hot pressure, and back from the gauge to the pre-charge. */
import { liquidExpansion } from '../../../domain/hydronics/fluid/liquidExpansion.ts';
import { highestNormalHotPressure } from '../../../domain/hydronics/pressure/reliefHeadroom.ts';
import { effectivePreCharge, vesselWaterHeld } from '../../../domain/hydronics/vessel/vesselGas.ts';
import { ok } from '../../../domain/result.ts';
import { reading } from '../core/fields.ts';
import { numberLine, wordsLine } from '../core/line.ts';
import { SYSTEM_PRESSURE, VOLUME } from '../core/measures.ts';
import { work } from '../core/worked.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { fluidOf } from './fluidFields.ts';
import { pressureAt, vesselChart } from './vesselChart.ts';
import { systemFields, vesselVolumeField } from './vesselFields.ts';

export const vesselCheck = defineWorksheet({
  key: 'vessel-check',
  title: 'Expansion vessel: check',
  answers: 'The hot pressure to expect, and the pre-charge a vessel really has by what the gauge shows cold and hot.',
  group: 'Water side',
  caution:
    'A pre-charge is measured with the water side open and at zero. Hot water under pressure scalds: let it cool first.',
  fields: {
    vesselL: vesselVolumeField,
    preChargeBarG: reading('vesselPreChargeBarG', { label: 'Pre-charge as set', alsoCalled: ['vesselPreChargeBarG'] }),
    coldPressureBarG: reading('systemPressureBarG', {
      label: 'Gauge cold',
      points: ['cold', 'static', null],
      alsoCalled: ['pressureBarG'],
    }),
    hotPressureBarG: reading('systemPressureBarG', {
      label: 'Gauge hot',
      points: ['hot'],
      help: 'At the hottest water below; for the diagnosis.',
    }),
    ...systemFields,
  },
  workOut(given) {
    const { practice, vesselL, preChargeBarG, coldPressureBarG, hotPressureBarG, systemVolumeL, coldC, hotC } = given;
    const { reliefSettingBarG } = given;
    const fluid = fluidOf(given.fluid, given.glycolPct);
    const vessel = work({ vesselL, preChargeBarG, coldPressureBarG, systemVolumeL, coldC, fluid }, (known) =>
      ok({ ...known, vesselVolumeL: known.vesselL }),
    );
    const end = work({ reliefSettingBarG }, (known) => highestNormalHotPressure({ ...known, practice }));
    const expected = work({ vessel, hotC }, (known) => pressureAt(known.vessel, known.hotC));
    const expandedWaterL = work({ fluid, coldC, hotC, systemVolumeL }, (known) => {
      const expansion = liquidExpansion(known);
      return expansion.ok ? ok(expansion.value * known.systemVolumeL) : expansion;
    });
    const effective = work({ vesselL, coldPressureBarG, hotPressureBarG, expandedWaterL }, (known) =>
      effectivePreCharge({ ...known, vesselVolumeL: known.vesselL }),
    );
    const lost = work({ effective, preChargeBarG }, (known) => ok(known.preChargeBarG - known.effective));
    return {
      lines: [
        numberLine('Hot pressure to expect', SYSTEM_PRESSURE, expected, { main: true }),
        numberLine('Highest normal hot pressure', SYSTEM_PRESSURE, end),
        wordsLine(
          'The vessel, by its data, is',
          work({ expected, end }, (known) =>
            ok(
              known.expected > known.end
                ? ({ words: 'too small, or its pre-charge or fill is wrong', tone: 'bad' } as const)
                : ({ words: 'large enough for this system', tone: 'good' } as const),
            ),
          ),
        ),
        numberLine(
          'Water in the vessel, cold',
          VOLUME,
          work({ vesselL, preChargeBarG, coldPressureBarG }, (known) =>
            vesselWaterHeld({
              vesselVolumeL: known.vesselL,
              preChargeBarG: known.preChargeBarG,
              pressureBarG: known.coldPressureBarG,
            }),
          ),
        ),
        numberLine('Water that expands', VOLUME, expandedWaterL),
        numberLine('Pre-charge by the gauge, cold to hot', SYSTEM_PRESSURE, effective, { main: true, extra: true }),
        wordsLine(
          'Against the pre-charge as set',
          work({ lost }, (known) =>
            ok(
              known.lost > NOTABLE_LOSS_BAR
                ? ({ words: 'it has lost some: measure it with the water side open', tone: 'doubt' } as const)
                : ({ words: 'no loss to be seen by the gauge', tone: 'good' } as const),
            ),
          ),
          { extra: true },
        ),
      ],
      chart: vesselChart({
        vessel,
        upToC: hotC.ok ? hotC.value : Number.NaN,
        highestNormalBarG: end,
        reliefSettingBarG,
        marks:
          hotPressureBarG.ok && hotC.ok
            ? [{ label: 'gauge hot', at: [hotC.value, hotPressureBarG.value] as const }]
            : [],
      }),
    };
  },
  formula: [
    'hot pressure = (cold + 1.013) · gas / (gas − expanded water) − 1.013, in bar; gas = vessel · (pre-charge + 1.013) / (cold + 1.013)',
    'pre-charge by the gauge = gas · (cold + 1.013) / vessel − 1.013; gas = expanded water · (hot + 1.013) / (hot − cold)',
  ],
  valid: [
    'Gas at one temperature, sound diaphragm; warming of the gas adds a few percent. A cold pressure below the pre-charge counts as the pre-charge.',
    'With a torn diaphragm the answer is the cold pressure, whatever the readings.',
    'A system volume that is only estimated (±40 %) moves the diagnosis as far. What counts as a loss here (0.2 bar, 3 psi) is our own judgement.',
  ],
  source: ['Gas law. Densities: IAPWS R7-97(2012); IIR 2010 (Melinder) for glycol.'],
});

/** The gauge's own error, cold and hot together. */
const NOTABLE_LOSS_BAR = 0.2;
