/** Flowing gas cannot stand higher than standing gas. */
import { exchange, type MistakeRule, mistakeFinding } from './mistakeFinding.ts';

/** A regulator's own wander between two readings, beyond the manometer's class. */
const WANDER_MBAR = 0.2;

export const staticDynamicSwapped: MistakeRule = {
  row: 13,
  find: (context) => {
    const standing = context.latest('inletPressureMbarG', 'static');
    if (standing === undefined) return [];
    return ['dynamic', 'dynamic-all-on'].flatMap((point) => {
      const flowing = context.latest('inletPressureMbarG', point);
      if (flowing === undefined) return [];
      const tolerance = WANDER_MBAR + Math.hypot(standing.plusMinus, flowing.plusMinus);
      if (flowing.value - standing.value <= tolerance) return [];
      return [
        mistakeFinding(
          {
            code: 'static-dynamic-swapped',
            about: [standing, flowing],
            from: 'physics',
            rule: 'dynamic is at most static',
            ask: 'static (burner off) and dynamic (full load) pressure: swapped?',
            suggestions: [exchange('static-dynamic-swapped', standing, flowing)],
          },
          context,
        ),
      ];
    });
  },
};
