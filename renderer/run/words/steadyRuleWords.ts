/** How many samples, how far apart and how alike: the sheet's rule for a steady flame in one line. */
import type { ModelSheet } from '../../../domain/procedure/modelSheet.ts';

/** A number and its unit never part at the end of a line. */
const NO_BREAK = '\u00a0';

export function steadyRuleWords(steady: ModelSheet['steady']): string {
  const parts = [
    `${steady.minSamples} samples`,
    `${steady.apartS} s apart`,
    `within ${steady.o2Points} % O₂`,
    `${steady.coPpm} ppm or ${steady.coPct} % CO`,
    `${steady.flueK} K flue`,
  ];
  return parts.map((part) => part.replaceAll(' ', NO_BREAK)).join(', ');
}
