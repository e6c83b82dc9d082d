/** Heat carried off by the water, where flow and both temperatures were read at one point. */
import { WATER } from '../../hydronics/fluid/systemFluid.ts';
import { heatOutput } from '../../hydronics/output/heatOutput.ts';
import { LEAST_USEFUL_DELTA_T_K } from '../../hydronics/output/heatOutputUncertainty.ts';
import type { Finding } from '../finding.ts';
import type { RunContext } from '../runContext.ts';
import { cannotCompute, computedFinding, plusMinusOf } from './computedFinding.ts';

const HIGH = 'high';
const FORMULA = 'flow · density · heat capacity · (supply − return), meter in the return';

export function heatOutputOfCircuit(context: RunContext): readonly Finding[] {
  return context.all('systemFlowLPerMin').flatMap((flow) => {
    // A flow that the boiler shows at no firing point in particular is held against high fire.
    const point = flow.point ?? HIGH;
    const supply = context.latest('supplyC', point);
    const returned = context.latest('returnC', point);
    if (supply === undefined || returned === undefined) return [];
    const common = { name: 'heat-output', point, from: [flow, supply, returned], formula: FORMULA };
    if (supply.value - returned.value < LEAST_USEFUL_DELTA_T_K) {
      return [cannotCompute({ ...common, missing: ['supply at least 5 K above return'] }, context)];
    }
    const glycolPct = context.latest('glycolPct')?.value ?? 0;
    if (glycolPct > 0)
      return [cannotCompute({ ...common, missing: ['the kind of glycol and its share by mass'] }, context)];
    const output = (flowLPerMin = 0, supplyC = 0, returnC = 0) => {
      const result = heatOutput({ flowLPerMin, meterC: returnC, supplyC, returnC, fluid: WATER });
      return result.ok ? result.value : null;
    };
    const value = output(flow.value, supply.value, returned.value);
    if (value === null)
      return [cannotCompute({ ...common, missing: ['a flow and temperatures that are possible'] }, context)];
    return [computedFinding({ ...common, unit: 'kW', value, plusMinus: plusMinusOf(output, common.from) }, context)];
  });
}
