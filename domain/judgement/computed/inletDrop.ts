/** How far the gas pressure falls from standing gas to full load; and the reading with everything running, where it is asked for. */
import type { Finding } from '../finding.ts';
import type { RunContext } from '../runContext.ts';
import { cannotCompute, computedFinding } from './computedFinding.ts';

const INLET = 'inletPressureMbarG';
const ALL_ON = 'dynamic-all-on';

export function inletDrop(context: RunContext): readonly Finding[] {
  const standing = context.latest(INLET, 'static');
  const flowing = context.latest(INLET, ALL_ON) ?? context.latest(INLET, 'dynamic');
  if (standing === undefined || flowing === undefined) return [];
  const plusMinus = Math.hypot(standing.plusMinus, flowing.plusMinus);
  const drop = computedFinding(
    {
      name: 'inlet-drop',
      point: flowing.point,
      from: [standing, flowing],
      formula: 'static − dynamic',
      unit: 'mbar',
      value: standing.value - flowing.value,
      plusMinus: plusMinus > 0 ? plusMinus : null,
    },
    context,
  );
  return [drop, ...allAppliancesOn(context)];
}

/** A supply that holds for one boiler may not hold for the house: the sheet's item stays open until it is read or left out with a reason. */
function allAppliancesOn(context: RunContext): readonly Finding[] {
  const dynamic = context.latest(INLET, 'dynamic');
  const isAnswered = context.record.readings.some((one) => one.quantity === INLET && one.point === ALL_ON);
  const isAsked = context.steps.some((step) =>
    step.items.some((item) => item.kind === 'read' && item.point === ALL_ON),
  );
  if (dynamic === undefined || isAnswered || !isAsked) return [];
  return [
    cannotCompute(
      {
        name: 'inlet-all-on',
        point: null,
        from: [dynamic],
        formula: 'dynamic inlet pressure with every appliance running',
        blocks: ['leaving'],
        missing: ['inlet pressure with all appliances on'],
      },
      context,
    ),
  ];
}
