/** The outdoor temperature the boiler believes in against the real one, and what water it therefore asks for. */
import { twoPointReset } from '../../hydronics/reset/twoPointReset.ts';
import { kelvinDifferenceToFahrenheitDifference } from '../../quantity/conversions.ts';
import type { Finding } from '../finding.ts';
import type { RunContext } from '../runContext.ts';
import { computedFinding } from './computedFinding.ts';

/** Common practice: 3 °C (5 °F) off needs fixing. */
const LARGEST_DIFFERENCE_K = 3;
const LOOK_AT = 'sun, a vent or a warm wall at the sensor; open or shorted wires; wrong kind of sensor';

export function outdoorSensor(context: RunContext): readonly Finding[] {
  const shown = context.latest('displayOutdoorC');
  const real = context.latest('outdoorC');
  if (shown === undefined || real === undefined) return [];
  const value = shown.value - real.value;
  const isOff = Math.abs(value) > LARGEST_DIFFERENCE_K;
  return [
    computedFinding(
      {
        name: 'outdoor-sensor',
        point: null,
        from: [shown, real],
        formula: 'displayed − real outdoor temperature',
        unit: 'K',
        value,
        plusMinus: Math.hypot(shown.plusMinus, real.plusMinus) || null,
        verdict: isOff ? 'outside' : 'within',
        blocks: isOff ? ['leaving'] : [],
        basis: {
          from: 'practice',
          source: {
            kind: 'common-practice',
            source: `more than ${LARGEST_DIFFERENCE_K} K (${Math.round(
              kelvinDifferenceToFahrenheitDifference(LARGEST_DIFFERENCE_K),
            )} °F) off is to be put right`,
          },
          inputs: { ...waterAskedFor(shown.value, real.value, context), ...(isOff ? { lookAt: LOOK_AT } : {}) },
        },
      },
      context,
    ),
  ];
}

function waterAskedFor(shownC: number, realC: number, context: RunContext): Readonly<Record<string, number>> {
  const designOutdoor = context.latest('resetDesignOutdoorC');
  const designSupply = context.latest('resetDesignSupplyC');
  const mildOutdoor = context.latest('resetMildOutdoorC');
  const mildSupply = context.latest('resetMildSupplyC');
  if (!designOutdoor || !designSupply || !mildOutdoor || !mildSupply) return {};
  const at = (outdoorC: number) =>
    twoPointReset({
      designOutdoorC: designOutdoor.value,
      designSupplyC: designSupply.value,
      warmOutdoorC: mildOutdoor.value,
      warmSupplyC: mildSupply.value,
      outdoorC,
    });
  const [asked, needed] = [at(shownC), at(realC)];
  return asked.ok && needed.ok ? { supplyAskedForC: asked.value, supplyNeededC: needed.value } : {};
}
