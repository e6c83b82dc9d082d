/** The CO/CO2 ratio as typed does not follow from CO and CO2 of the same sample. */
import { change, type MistakeRule, mistakeFinding } from './mistakeFinding.ts';

const PPM_PER_PCT = 10_000;
/** CO2 on the display is rounded to 0.1 %, CO to 1 ppm. */
const AGREES_WITHIN_SHARE = 0.1;
/** Four decimals on the display, cut off or rounded. */
const LAST_PLACE = 0.00011;

export const ratioMistyped: MistakeRule = {
  row: 6,
  find: (context) =>
    context.rows.flatMap((row) => {
      const ratio = row.get('coCo2Ratio');
      const co = row.get('coPpm');
      const co2 = row.get('co2DryVolPct');
      if (!ratio || !co || !co2 || co.reading.comparator !== '=' || co2.value <= 0) return [];
      const computed = co.value / (co2.value * PPM_PER_PCT);
      if (Math.abs(ratio.value - computed) <= computed * AGREES_WITHIN_SHARE + LAST_PLACE) return [];
      return [
        mistakeFinding(
          {
            code: 'ratio-mistyped',
            about: [ratio, co, co2],
            from: 'physics',
            rule: 'ratio = CO / (CO₂ · 10 000), within 10 %',
            ask: 'the ratio, CO and CO₂ on the analyser’s screen',
            inputs: { computedRatio: computed },
            suggestions: [change('ratio-mistyped', [ratio, Number(computed.toFixed(4))])],
          },
          context,
        ),
      ];
    }),
};
