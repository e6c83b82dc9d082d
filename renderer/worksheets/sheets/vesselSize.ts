/** Which expansion vessel a system needs, and between which cold fills one that is there works. */
import { liquidExpansion } from '../../../domain/hydronics/fluid/liquidExpansion.ts';
import { highestNormalHotPressure } from '../../../domain/hydronics/pressure/reliefHeadroom.ts';
import { diaphragmTankVolume } from '../../../domain/hydronics/vessel/tankVolume.ts';
import { vesselFillWindow } from '../../../domain/hydronics/vessel/vesselFillWindow.ts';
import { vesselSizeToChoose, vesselVolumeNeeded } from '../../../domain/hydronics/vessel/vesselVolumeNeeded.ts';
import { waterReserve } from '../../../domain/hydronics/vessel/waterReserve.ts';
import { STANDARD_ATMOSPHERE_PA } from '../../../domain/quantity/conversions.ts';
import { ok } from '../../../domain/result.ts';
import { reading } from '../core/fields.ts';
import { numberLine, rangeLine } from '../core/line.ts';
import { PERCENT_FINE, SYSTEM_PRESSURE, VOLUME } from '../core/measures.ts';
import { said, work } from '../core/worked.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { fluidOf } from './fluidFields.ts';
import { vesselChart } from './vesselChart.ts';
import { systemFields, vesselVolumeField } from './vesselFields.ts';

export const vesselSize = defineWorksheet({
  key: 'vessel-size',
  title: 'Expansion vessel: size',
  answers: 'The vessel a system needs, and the cold fills a given one works with.',
  group: 'Water side',
  caution: 'A vessel is set with its water side open and at zero. Hot water under pressure scalds: let it cool first.',
  fields: {
    ...systemFields,
    preChargeBarG: reading('vesselPreChargeBarG', { label: 'Pre-charge', alsoCalled: ['vesselPreChargeBarG'] }),
    vesselL: { ...vesselVolumeField, label: 'Vessel that is there', help: 'If there is one to check.' },
  },
  workOut(given) {
    const { practice, systemVolumeL, coldC, hotC, reliefSettingBarG, preChargeBarG, vesselL } = given;
    const fluid = fluidOf(given.fluid, given.glycolPct);
    const expansion = work({ fluid, coldC, hotC }, liquidExpansion);
    const end = work({ reliefSettingBarG }, (known) => highestNormalHotPressure({ ...known, practice }));
    const duty = work({ systemVolumeL, expansion, preChargeBarG, end }, (known) =>
      ok({
        systemVolumeL: known.systemVolumeL,
        expansionFraction: known.expansion,
        preChargeBarG: known.preChargeBarG,
        endPressureBarG: known.end,
      }),
    );
    const size = work({ duty }, (known) => vesselSizeToChoose(known.duty));
    const reserve = work({ systemVolumeL, size }, (known) =>
      known.size === undefined
        ? said('no usual size is large enough')
        : waterReserve({ systemVolumeL: known.systemVolumeL, vesselVolumeL: known.size }),
    );
    const window = work({ duty, vesselL }, (known) => {
      const kept = waterReserve({ systemVolumeL: known.duty.systemVolumeL, vesselVolumeL: known.vesselL });
      if (!kept.ok) return kept;
      return vesselFillWindow({ ...known.duty, vesselVolumeL: known.vesselL, waterReserveL: kept.value });
    });
    const fillAt = work({ window }, (known) => ok((known.window.lowestBarG + known.window.highestBarG) / 2));
    return {
      lines: [
        numberLine(
          'Vessel to choose, usual size',
          { ...VOLUME, decimals: 0 },
          work({ size }, (known) =>
            known.size === undefined ? said('no usual size is large enough') : ok(known.size),
          ),
          { main: true },
        ),
        numberLine(
          'Smallest that would do',
          VOLUME,
          work({ duty, reserve }, (known) => vesselVolumeNeeded({ ...known.duty, waterReserveL: known.reserve })),
          { main: true },
        ),
        numberLine(
          'Expansion',
          { ...PERCENT_FINE, decimals: 2 },
          work({ expansion }, (known) => ok(100 * known.expansion)),
        ),
        numberLine(
          'Water that expands',
          VOLUME,
          work({ expansion, systemVolumeL }, (known) => ok(known.expansion * known.systemVolumeL)),
        ),
        numberLine('Water kept in reserve', VOLUME, reserve),
        numberLine('Highest normal hot pressure', SYSTEM_PRESSURE, end),
        numberLine(
          'By the North American form, pre-charged to cold fill',
          VOLUME,
          work({ duty, coldC, hotC }, ({ duty: { systemVolumeL: volume, ...of }, coldC: cold, hotC: hot }) =>
            diaphragmTankVolume({
              systemVolumeL: volume,
              expansionFraction: of.expansionFraction,
              temperatureRiseK: hot - cold,
              pipeMetal: null,
              coldPressureBarAbs: of.preChargeBarG + ATMOSPHERE_BAR,
              hotPressureBarAbs: of.endPressureBarG + ATMOSPHERE_BAR,
            }),
          ),
        ),
        rangeLine(
          'Cold fill this vessel works with',
          SYSTEM_PRESSURE,
          work({ window }, (known) =>
            known.window.isVesselTooSmall
              ? said('this vessel is too small: no fill keeps its reserve and takes the expansion')
              : ok([known.window.lowestBarG, known.window.highestBarG] as const),
          ),
          { extra: true },
        ),
      ],
      chart: vesselChart({
        vessel: work({ vesselL, preChargeBarG, fillAt, systemVolumeL, coldC, fluid }, (known) =>
          ok({
            vesselVolumeL: known.vesselL,
            preChargeBarG: known.preChargeBarG,
            coldPressureBarG: known.fillAt,
            systemVolumeL: known.systemVolumeL,
            coldC: known.coldC,
            fluid: known.fluid,
          }),
        ),
        upToC: hotC.ok ? hotC.value : Number.NaN,
        highestNormalBarG: end,
        reliefSettingBarG,
        marks: [],
      }),
    };
  },
  formula: [
    'vessel = (expanded water + reserve) · (pe + 1) / (pe − p0), gauge pressures in bar',
    'reserve: 0.5 % of the system and at least 3 L; 20 % of a vessel of 15 L or less',
    'North American form: system · growth / (1 − P1/P2), absolute pressures; the growth of the pipes left out',
  ],
  valid: [
    'Closed systems, water below 100 °C (212 °F). Glycol above 40 °C: ±1 % on its density.',
    'The curve is drawn for a cold fill in the middle of what this vessel works with.',
  ],
  source: [
    'EN 12828, formulas from memory; ASHRAE HVAC Systems and Equipment, hydronic chapter, diaphragm tanks.',
    'Densities: IAPWS R7-97(2012); IIR 2010 (Melinder) for glycol. Sizes: usual catalogue sizes, common practice, no source.',
  ],
});

const ATMOSPHERE_BAR = STANDARD_ATMOSPHERE_PA / 100_000;
