/** CO air-free in the box for CO as measured, or the other way round. Air-free is never the smaller one. */
import { coAirFreeFromO2 } from '../../combustion/coAirFree.ts';
import { change, type MistakeRule, mistakeFinding } from './mistakeFinding.ts';

/** ± 5 %: analysers round both numbers and take 20.9 or 21 for the air. */
const AGREES_WITHIN_SHARE = 0.05;
/** Whole ppm on the display, on both of them. */
const ROUNDING_PPM = 1.5;

export const airFreeTypedAsMeasured: MistakeRule = {
  row: 3,
  find: (context) =>
    context.rows.flatMap((row) => {
      const co = row.get('coPpm');
      const airFree = row.get('coAirFreePpm');
      const o2 = row.get('o2DryVolPct');
      if (!co || !airFree || !o2 || co.reading.comparator !== '=' || airFree.reading.comparator !== '=') return [];
      const computed = airFreeOf(co.value, o2.value);
      if (computed === null || agrees(airFree.value, computed)) return [];
      const otherWayRound = airFreeOf(airFree.value, o2.value);
      const isSwapped = otherWayRound !== null && agrees(co.value, otherWayRound);
      return [
        mistakeFinding(
          {
            code: 'air-free-typed-as-measured',
            about: [co, airFree, o2],
            from: 'physics',
            rule: 'CO air-free = CO · 20.9 / (20.9 − O₂), within 5 %, and never less than CO as measured',
            ask: 'CO as measured and CO air-free on the analyser’s screen',
            inputs: { computedAirFreePpm: computed },
            ...(isSwapped
              ? {
                  suggestions: [change('air-free-typed-as-measured', [co, airFree.value], [airFree, co.value])],
                }
              : {}),
          },
          context,
        ),
      ];
    }),
};

function airFreeOf(coPpmDry: number, o2DryVolPct: number): number | null {
  const result = coAirFreeFromO2({ coPpmDry, o2DryVolPct });
  return result.ok ? result.value : null;
}

function agrees(shown: number, computed: number): boolean {
  return Math.abs(shown - computed) <= computed * AGREES_WITHIN_SHARE + ROUNDING_PPM;
}
