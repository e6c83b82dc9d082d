import type { BarGauge } from '../../quantity/units.ts';
import { assertNever, checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';
import type { PressurePractice } from '../pressure/pressureCustoms.ts';

/**
 * Pre-charge to set, water side open and at zero: a vessel under water pressure can't be set or measured.
 *
 * Formula  Europe: static height pressure + 0.2…0.3 bar and at most cold fill − 0.2…0.3 bar, which leaves a water
 *          reserve; North America: the cold fill pressure itself
 * Units    bar gauge; a range, of which the lower end is the least and the upper end the most. In Europe the range is
 *          empty (least above most) when the fill pressure is too low for the height
 * Valid    static pressure 0–20 bar, cold fill 0–20 bar gauge; outside it an error, never a number
 * Source   Europe: EN 12828, from memory (p0 ≥ p_static + 0.2 bar); North America: trade training pages
 * Checked  tests/domain/hydronics/vessel/preCharge.test.ts
 */
export function preChargeToSet(system: {
  readonly staticPressureBar: number;
  readonly coldFillBarG: BarGauge;
  readonly practice: PressurePractice;
}): Result<{ readonly leastBarG: BarGauge; readonly mostBarG: BarGauge }, OutOfRange> {
  const { staticPressureBar, coldFillBarG, practice } = system;
  const refused =
    checkRange('staticPressureBar', staticPressureBar, 0, 20) ?? checkRange('coldFillBarG', coldFillBarG, 0, 20);
  if (refused) return err(refused);
  switch (practice) {
    case 'europe':
      return ok({ leastBarG: staticPressureBar + RESERVE_BAR, mostBarG: coldFillBarG - RESERVE_BAR });
    case 'north-america':
      return ok({ leastBarG: coldFillBarG, mostBarG: coldFillBarG });
    default:
      return assertNever(practice);
  }
}

const RESERVE_BAR = 0.2;
