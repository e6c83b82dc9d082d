/** What else keeps a number from being proof: the display at its end, a vessel under water, a wait that is not certain, age. */
import type { LapseKind } from '../../procedure/modelSheet.ts';
import type { QuantityKey } from '../../quantity/quantities.ts';
import type { NotProvenReason } from '../finding.ts';
import type { Measured } from '../measured.ts';
import type { RunContext } from '../runContext.ts';

/** A confirm item that meets this says that the water side of the vessel stood open at zero. */
export const WATER_SIDE_AT_ZERO = 'water-side-at-zero';
/** Or the gauge itself was read there. A gauge needle rests within this of zero. */
const WATER_SIDE_POINT = 'water-side';
const GAUGE_AT_ZERO_BAR = 0.05;

const LAPSE_OF: Readonly<Partial<Record<QuantityKey, LapseKind>>> = {
  tightnessPressureMbarG: 'tightness',
  tightnessDropMbar: 'tightness',
  tightnessMinutes: 'tightness',
  roomCoPpm: 'roomCo',
  systemPressureBarG: 'pressure',
};

export function otherReasons(one: Measured, context: RunContext): readonly NotProvenReason[] {
  const reasons: NotProvenReason[] = [];
  if (isOverRange(one, context)) reasons.push('over-range');
  if (one.quantity === 'vesselPreChargeBarG' && !isWaterSideAtZero(context)) reasons.push('water-side-not-at-zero');
  if (hasLapsed(one, context)) reasons.push('hold-lapsed');
  if (clockJumpedInStep(one.reading.stepKey, context)) reasons.push('clock-jumped');
  return reasons;
}

function isOverRange(one: Measured, context: RunContext): boolean {
  const rangeMax = context.instrument(one.reading.instrumentId)?.rangeMax[one.quantity];
  return one.reading.comparator !== '=' || (rangeMax !== undefined && one.value >= rangeMax);
}

function isWaterSideAtZero(context: RunContext): boolean {
  const gauge = context.latest('systemPressureBarG', WATER_SIDE_POINT);
  if (gauge !== undefined) return gauge.value <= GAUGE_AT_ZERO_BAR;
  const items = context.steps.flatMap((step) => step.items).filter((item) => item.meets.includes(WATER_SIDE_AT_ZERO));
  return items.some((item) => context.answer(item.key)?.value === 'yes');
}

function hasLapsed(one: Measured, context: RunContext): boolean {
  const lapse = LAPSE_OF[one.quantity];
  const { reopenedAtMs } = context;
  if (lapse === undefined || reopenedAtMs === null || one.atMs === null) return false;
  return reopenedAtMs - one.atMs > context.sheet.lapseHours[lapse] * 3_600_000;
}

/** A wait whose clock moved proves nothing, so neither does what was read after it in the same step. */
function clockJumpedInStep(stepKey: string, context: RunContext): boolean {
  return context.holds.some((hold) => hold.clockJumped && context.stepOfItem.get(hold.itemKey) === stepKey);
}
