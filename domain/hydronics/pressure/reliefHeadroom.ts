import { psiToBar } from '../../quantity/conversions.ts';
import type { BarGauge } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';
import type { PressurePractice } from './pressureCustoms.ts';

/**
 * Highest pressure a hot system should show in normal running, so that its relief valve stays dry.
 *
 * Formula  Europe: setting − 0.5 bar up to a setting of 5 bar, setting − 10 % above it (from memory);
 *          North America: 90 % of the setting
 * Units    bar gauge
 * Valid    settings 1–16 bar gauge; outside it an error, never a number
 * Source   Europe: German trade note on end pressure; North America: ASHRAE HVAC Systems and Equipment, hydronic chapter
 * Checked  tests/checks/hydronics/pressureRows.ts P7
 */
export function highestNormalHotPressure(valve: {
  readonly reliefSettingBarG: BarGauge;
  readonly practice: PressurePractice;
}): Result<BarGauge, OutOfRange> {
  const { reliefSettingBarG, practice } = valve;
  const refused = checkRange('reliefSettingBarG', reliefSettingBarG, 1, 16);
  if (refused) return err(refused);
  if (practice === 'north-america') return ok(0.9 * reliefSettingBarG);
  return ok(reliefSettingBarG <= 5 ? reliefSettingBarG - 0.5 : 0.9 * reliefSettingBarG);
}

/**
 * How a pressure, cold or hot, stands to the relief valve.
 *
 * Formula  headroom = setting − pressure; *outside* above the highest normal hot pressure, else *near the edge* from
 *          0.4 bar (Europe) or 6 psi (North America) below the setting, else *within*. For settings of 5 bar or less the
 *          European highest normal pressure comes before that edge, so that there is no *near the edge*
 * Units    bar gauge, bar
 * Valid    pressure −1 to 40 bar gauge, settings 1–16 bar gauge; outside it an error, never an answer
 * Source   as `highestNormalHotPressure`; the edge is common practice
 * Checked  tests/checks/hydronics/pressureRows.ts P4; tests/domain/hydronics/pressure/reliefHeadroom.test.ts
 */
export function reliefHeadroom(state: {
  readonly pressureBarG: BarGauge;
  readonly reliefSettingBarG: BarGauge;
  readonly practice: PressurePractice;
}): Result<ReliefHeadroom, OutOfRange> {
  const { pressureBarG, reliefSettingBarG, practice } = state;
  const highestNormal = highestNormalHotPressure({ reliefSettingBarG, practice });
  if (!highestNormal.ok) return highestNormal;
  const refused = checkRange('pressureBarG', pressureBarG, -1, 40);
  if (refused) return err(refused);
  const nearTheEdgeFromBarG = reliefSettingBarG - EDGE_BAR[practice];
  return ok({
    headroomBar: reliefSettingBarG - pressureBarG,
    highestNormalBarG: highestNormal.value,
    nearTheEdgeFromBarG,
    position:
      pressureBarG > highestNormal.value ? 'outside' : pressureBarG >= nearTheEdgeFromBarG ? 'near-the-edge' : 'within',
  });
}

export type ReliefHeadroom = {
  readonly headroomBar: number;
  readonly highestNormalBarG: BarGauge;
  readonly nearTheEdgeFromBarG: BarGauge;
  readonly position: 'within' | 'near-the-edge' | 'outside';
};

const EDGE_BAR: Record<PressurePractice, number> = { europe: 0.4, 'north-america': psiToBar(6) };
