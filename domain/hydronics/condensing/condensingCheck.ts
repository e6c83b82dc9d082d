import type { Celsius, KelvinDifference } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

/**
 * Whether a boiler condenses: the **return**, not the supply, against the flue gas's dew point at the measured CO2 or O2.
 *
 * Formula  margin = dew point − return; it condenses while the margin is positive, usefully from a return of 50 °C down
 * Units    °C; K
 * Valid    return 0–120 °C, dew point 0–100 °C; outside it an error, never an answer
 * Source   definition; useful gain at a return of 45–50 °C or less: common practice, no source
 * Checked  tests/domain/hydronics/condensing/condensingCheck.test.ts; dew points tests/checks/hydronics/condensingRows.ts
 */
export function condensingCheck(state: {
  readonly returnC: Celsius;
  readonly dewPointC: Celsius;
}): Result<CondensingCheck, OutOfRange> {
  const { returnC, dewPointC } = state;
  const refused = checkRange('returnC', returnC, 0, 120) ?? checkRange('dewPointC', dewPointC, 0, 100);
  if (refused) return err(refused);
  const marginK = dewPointC - returnC;
  return ok({ marginK, isCondensing: marginK > 0, isGainUseful: marginK > 0 && returnC <= USEFUL_GAIN_RETURN_C });
}

export type CondensingCheck = {
  readonly marginK: KelvinDifference;
  readonly isCondensing: boolean;
  readonly isGainUseful: boolean;
};

/** The rule of thumb for natural gas, 130 °F, as published by a federal agency and a state energy office. */
export const CONDENSING_RETURN_RULE_C: Celsius = 54;

const USEFUL_GAIN_RETURN_C: Celsius = 50;
