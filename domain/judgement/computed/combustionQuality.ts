/** Excess air, flue loss, efficiency and condensation of each firing point, from the newest sample that holds what it takes. */
import { excessAirFromO2 } from '../../combustion/airRatio.ts';
import { combustionEfficiency } from '../../combustion/combustionEfficiency.ts';
import { flueLossFromO2, SIEGERT_CONSTANTS, type SiegertConstants } from '../../combustion/siegert.ts';
import { standardAtmosphere } from '../../gas/standardAtmosphere.ts';
import { condensingCheck } from '../../hydronics/condensing/condensingCheck.ts';
import type { FuelKey } from '../../procedure/modelSheet.ts';
import type { Finding } from '../finding.ts';
import type { Measured } from '../measured.ts';
import { orNull } from '../orNull.ts';
import type { RunContext } from '../runContext.ts';
import { cannotCompute, computedFinding, plusMinusOf } from './computedFinding.ts';

export function combustionQuality(context: RunContext): readonly Finding[] {
  return [...context.firingPoints].flatMap((point) => [...excessAir(point, context), ...flueSide(point, context)]);
}

const EXCESS_AIR = 'excess air = 100 · k · O₂ / (20.946 − O₂)';

function excessAir(point: string, context: RunContext): readonly Finding[] {
  const o2 = context.lastRow(point, ['o2DryVolPct'])?.get('o2DryVolPct');
  if (o2 === undefined) return [];
  const formula = (o2DryVolPct: number) => orNull(excessAirFromO2({ fuel: context.fuel, o2DryVolPct }));
  const value = formula(o2.value);
  const common = { name: 'excess-air', point, from: [o2], formula: EXCESS_AIR };
  if (value === null) return [cannotCompute({ ...common, missing: ['O₂ between 0.5 and 15 %'] }, context)];
  return [computedFinding({ ...common, unit: '%', value, plusMinus: plusMinusOf(formula, [o2]) }, context)];
}

/** Standard pressure of a site whose altitude nobody wrote down: sea level. */
const SEA_LEVEL_M = 0;

function flueSide(point: string, context: RunContext): readonly Finding[] {
  const row = context.lastRow(point, ['o2DryVolPct', 'flueGasC']);
  const o2 = row?.get('o2DryVolPct');
  const flue = row?.get('flueGasC');
  const air = row?.near('intakeAirC');
  if (o2 === undefined || flue === undefined || air === undefined) return [];
  const from = [o2, flue, air];
  const pressure = standardAtmosphere({ elevationM: context.record.site.altitudeM ?? SEA_LEVEL_M });
  if (!pressure.ok) {
    return [
      cannotCompute({ name: 'efficiency', point, from, formula: NET, missing: ['the site’s altitude'] }, context),
    ];
  }
  const { pressureKpaAbs } = pressure.value;
  const all = (o2DryVolPct: number, flueGasC: number, airC: number) =>
    orNull(
      combustionEfficiency({
        fuel: context.fuel,
        o2DryVolPct,
        flueGasC,
        airC,
        airRelativeHumidityPct: 0,
        pressureKpaAbs,
      }),
    );
  const result = all(o2.value, flue.value, air.value);
  if (result === null) {
    const missing = ['O₂ of 0.5–15 % and a flue temperature of 20–600 °C, not below the intake air'];
    return [cannotCompute({ name: 'efficiency', point, from, formula: NET, missing }, context)];
  }
  const basis = { inputs: { pressureKpaAbs, airHumidity: 'taken as dry' } };
  const share = (key: 'efficiencyNetPct' | 'efficiencyGrossPct') =>
    plusMinusOf((...values) => all(values[0] ?? 0, values[1] ?? 0, values[2] ?? 0)?.[key] ?? null, from);
  const common = { point, from, unit: '%', basis };
  return [
    computedFinding(
      {
        ...common,
        name: 'efficiency-net',
        formula: NET,
        value: result.efficiencyNetPct,
        plusMinus: share('efficiencyNetPct'),
      },
      context,
    ),
    computedFinding(
      {
        ...common,
        name: 'efficiency-gross',
        formula: 'net · lower / higher heating value',
        value: result.efficiencyGrossPct,
        plusMinus: share('efficiencyGrossPct'),
      },
      context,
    ),
    ...flueLoss(point, o2, flue, air, context),
    ...condensing(point, result.dewPointC, row?.near('returnC'), from, context),
  ];
}

const NET = 'flue-side efficiency, condensation counted as far as flue gas saturated at its temperature allows';

const SIEGERT_OF: Readonly<Record<FuelKey, SiegertConstants>> = {
  'natural-gas': SIEGERT_CONSTANTS['public-network-gas'],
  propane: SIEGERT_CONSTANTS.lpg,
  butane: SIEGERT_CONSTANTS.lpg,
  'heating-oil': SIEGERT_CONSTANTS['light-heating-oil'],
};

function flueLoss(point: string, o2: Measured, flue: Measured, air: Measured, context: RunContext): readonly Finding[] {
  const constants = SIEGERT_OF[context.record.fuel];
  const loss = (o2DryVolPct = 0, flueGasC = 0, airC = 0) =>
    orNull(flueLossFromO2({ constants, o2DryVolPct, flueGasC, airC }));
  const value = loss(o2.value, flue.value, air.value);
  // Below the dew point the rule does not hold; the efficiency above does.
  if (value === null) return [];
  const from = [o2, flue, air];
  return [
    computedFinding(
      {
        name: 'flue-loss',
        point,
        from,
        formula: `qA = (flue − air) · (${constants.a} / (21 − O₂) + ${constants.b}), on the lower heating value`,
        unit: '%',
        value,
        plusMinus: plusMinusOf(loss, from),
      },
      context,
    ),
  ];
}

function condensing(
  point: string,
  dewPointC: number,
  returned: Measured | undefined,
  from: readonly Measured[],
  context: RunContext,
): readonly Finding[] {
  if (returned === undefined) return [];
  const check = orNull(condensingCheck({ returnC: returned.value, dewPointC }));
  if (check === null) return [];
  return [
    computedFinding(
      {
        name: 'dew-point',
        point,
        from: [...from, returned],
        formula: 'dew point of the flue gas; it condenses while the return is below',
        unit: '°C',
        value: dewPointC,
        plusMinus: null,
        basis: { inputs: { marginK: check.marginK, condenses: check.isCondensing ? 'yes' : 'no' } },
      },
      context,
    ),
  ];
}
