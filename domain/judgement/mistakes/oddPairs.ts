/** Samples whose O2 and CO2 cannot belong together for the fuel of this run, by the Fo test. */
import { type FoPlausibility, foPlausibility } from '../../combustion/foPlausibility.ts';
import type { Fuel } from '../../combustion/fuel.ts';
import type { Measured } from '../measured.ts';
import type { RunContext } from '../runContext.ts';

export type OddPair = {
  readonly o2: Measured;
  readonly co2: Measured;
  readonly coPpm: number;
  readonly fo: FoPlausibility;
};

const memo = new WeakMap<RunContext, readonly OddPair[]>();

/** Several rules look for an explanation of the same pairs. */
export function oddPairs(context: RunContext): readonly OddPair[] {
  const known = memo.get(context);
  if (known) return known;
  const pairs = findOddPairs(context);
  memo.set(context, pairs);
  return pairs;
}

function findOddPairs(context: RunContext): readonly OddPair[] {
  return context.rows.flatMap((row) => {
    const o2 = row.get('o2DryVolPct');
    const co2 = row.get('co2DryVolPct');
    if (o2 === undefined || co2 === undefined) return [];
    const coPpm = row.get('coPpm')?.value ?? 0;
    const fo = foOf(context.fuel, o2.value, co2.value, coPpm);
    return fo === null || fo.isInsideTightBand ? [] : [{ o2, co2, coPpm, fo }];
  });
}

/** null: outside what the test is made for. */
export function foOf(fuel: Fuel, o2DryVolPct: number, co2DryVolPct: number, coPpmDry: number): FoPlausibility | null {
  const fo = foPlausibility({ fuel, o2DryVolPct, co2DryVolPct, coPpmDry });
  return fo.ok ? fo.value : null;
}

export function fits(pair: OddPair, fuel: Fuel, o2DryVolPct: number, co2DryVolPct: number): boolean {
  return foOf(fuel, o2DryVolPct, co2DryVolPct, pair.coPpm)?.isInsideTightBand === true;
}

export function foInputs({ fo }: OddPair): Readonly<Record<string, number>> {
  return { fo: fo.fo, foOfFuel: fo.foOfFuel, tightBandMin: fo.tightBand.min, tightBandMax: fo.tightBand.max };
}
