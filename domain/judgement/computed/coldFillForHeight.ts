/** Whether the cold pressure carries the water to the top of the system, with the usual margin left there. */
import { coldFillPressure } from '../../hydronics/pressure/coldFillPressure.ts';
import { PRESSURE_CUSTOMS } from '../../hydronics/pressure/pressureCustoms.ts';
import type { Finding } from '../finding.ts';
import type { RunContext } from '../runContext.ts';
import { computedFinding } from './computedFinding.ts';

export function coldFillForHeight(context: RunContext): readonly Finding[] {
  const cold = context.latest('systemPressureBarG', 'cold');
  const { systemHeightM } = context.record.site;
  if (cold === undefined || systemHeightM === null) return [];
  const practice = context.region === 'north-america' ? 'north-america' : 'europe';
  const marginBar = PRESSURE_CUSTOMS[practice].marginBar.usual[0];
  const toTop = coldFillPressure({ systemHeightM, marginBar: 0 });
  const withMargin = coldFillPressure({ systemHeightM, marginBar });
  if (!toTop.ok || !withMargin.ok) return [];
  // Below the static height the top runs dry, which no margin of a gauge excuses; below the margin it is only tight.
  const isDryAtTop = cold.highest < toTop.value;
  const verdict = isDryAtTop ? 'outside' : cold.value < withMargin.value ? 'near-the-edge' : 'within';
  return [
    computedFinding(
      {
        name: 'cold-fill',
        point: null,
        from: [cold],
        formula: 'least cold pressure = height · 0.1 bar/m + margin',
        unit: 'bar',
        value: withMargin.value,
        plusMinus: null,
        verdict,
        blocks: isDryAtTop ? ['firing'] : [],
        basis: {
          from: isDryAtTop ? 'physics' : 'practice',
          source: { kind: 'common-practice', source: PRESSURE_CUSTOMS[practice].marginBasis },
          inputs: { systemHeightM, marginBar },
          limit: {
            quantity: 'systemPressureBarG',
            point: 'cold',
            min: isDryAtTop ? toTop.value : withMargin.value,
            max: null,
            severity: 'outside',
          },
        },
      },
      context,
    ),
  ];
}
