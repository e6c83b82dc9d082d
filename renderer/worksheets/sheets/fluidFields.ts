/** What the pipes hold: water, or a mixture with glycol given in volume %, as containers and refractometers say it. */
import { glycolMassPct } from '../../../domain/hydronics/fluid/glycolConcentration.ts';
import type { Glycol } from '../../../domain/hydronics/fluid/glycolKind.ts';
import { type SystemFluid, WATER } from '../../../domain/hydronics/fluid/systemFluid.ts';
import { ok } from '../../../domain/result.ts';
import { choice, reading } from '../core/fields.ts';
import { type Worked, work } from '../core/worked.ts';

export const FLUIDS = {
  water: 'water',
  'propylene-glycol': 'propylene glycol',
  'ethylene-glycol': 'ethylene glycol',
} as const satisfies Record<'water' | Glycol, string>;

export const fluidFields = {
  fluid: choice('Filled with', FLUIDS, 'water'),
  glycolPct: reading('glycolPct', {
    label: 'Glycol by volume',
    alsoCalled: ['glycolVolPct'],
    onlyFor: { field: 'fluid', is: ['propylene-glycol', 'ethylene-glycol'] },
  }),
};

export function fluidOf(fluid: keyof typeof FLUIDS, glycolVolPct: Worked<number>): Worked<SystemFluid> {
  if (fluid === 'water') return ok(WATER);
  return work({ glycolVolPct }, (known) => {
    const massPct = glycolMassPct({ glycol: fluid, glycolVolPct: known.glycolVolPct });
    return massPct.ok ? ok({ kind: fluid, glycolMassPct: massPct.value }) : massPct;
  });
}
