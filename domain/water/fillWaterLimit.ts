import type { Kw, Litre } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import { FILL_WATER_TABLES, type FillWaterEdition } from './fillWaterTable.ts';
import { convertHardness } from './hardness.ts';

/**
 * Hardness that fill and top-up water may have in this system. The boiler maker's own table overrides it.
 *
 * Formula  row by the output of all generators and the smallest one's water content, column by system litres per kW of
 *          the smallest generator
 * Units    kW, L, L/kW; mol/m³ and °dH, null for no limit
 * Valid    closed systems below 100 °C; outputs 0.1–100 000 kW, smallest not above total, system 0–10 000 000 L, content
 *          0–100 L/kW; outside it an error, never an answer
 * Source   VDI 2035 Part 1, tables in `fillWaterTable.ts`; the 2021 cells are from memory (`fromMemory`), so that no hard
 *          pass or fail should rest on them
 * Checked  tests/checks/water/fillWaterRows.ts H5, H6
 */
export function fillWaterLimit(system: {
  readonly edition: FillWaterEdition;
  readonly totalOutputKw: Kw;
  readonly smallestGeneratorKw: Kw;
  readonly generatorContentLPerKw: number;
  readonly systemVolumeL: Litre;
}): Result<FillWaterLimit, OutOfRange> {
  const { edition, totalOutputKw, smallestGeneratorKw, generatorContentLPerKw, systemVolumeL } = system;
  const refused =
    checkRange('totalOutputKw', totalOutputKw, 0.1, 100_000) ??
    checkRange('smallestGeneratorKw', smallestGeneratorKw, 0.1, totalOutputKw) ??
    checkRange('generatorContentLPerKw', generatorContentLPerKw, 0, 100) ??
    checkRange('systemVolumeL', systemVolumeL, 0, 10_000_000);
  if (refused) return err(refused);

  const table = FILL_WATER_TABLES[edition];
  const generator = generatorContentLPerKw >= 0.3 ? 'at-least-0.3-l-per-kw' : 'less-than-0.3-l-per-kw';
  const row = table.rows.find(
    (candidate) =>
      totalOutputKw <= (candidate.outputUpToKw ?? Number.POSITIVE_INFINITY) &&
      (candidate.generator === 'any' || candidate.generator === generator),
  );
  if (!row) throw new Error(`table ${edition} has no row for ${totalOutputKw} kW`);

  const specificVolumeLPerKw = systemVolumeL / smallestGeneratorKw;
  const [lowerEdge, middleEdge] = table.columnEdgesLPerKw;
  const isBelow = (edge: number) =>
    table.edgeBelongsBelow ? specificVolumeLPerKw <= edge : specificVolumeLPerKw < edge;
  const limitMolPerM3 = row.limitMolPerM3[isBelow(lowerEdge) ? 0 : isBelow(middleEdge) ? 1 : 2];
  return ok({
    specificVolumeLPerKw,
    limitMolPerM3,
    limitDh: limitMolPerM3 === null ? null : inDh(limitMolPerM3),
    source: table.title,
    fromMemory: table.fromMemory ?? false,
  });
}

export type FillWaterLimit = {
  readonly specificVolumeLPerKw: number;
  readonly limitMolPerM3: number | null;
  readonly limitDh: number | null;
  readonly source: string;
  readonly fromMemory: boolean;
};

/**
 * The stricter Austrian limits for small circulating heaters (up to 50 kW, less than 0.3 L/kW).
 *
 * Formula  11.2, 5.6, 0.6 °dH below 20, below 50, from 50 L/kW
 * Units    L/kW; °dH
 * Valid    0–10 000 L/kW; outside it an error, never a number
 * Source   ÖNORM H 5195-1 as quoted in a third-party manual
 * Checked  tests/checks/water/fillWaterRows.ts
 */
export function austrianFillWaterLimitDh(system: {
  readonly specificVolumeLPerKw: number;
}): Result<number, OutOfRange> {
  const { specificVolumeLPerKw } = system;
  const refused = checkRange('specificVolumeLPerKw', specificVolumeLPerKw, 0, 10_000);
  if (refused) return err(refused);
  if (specificVolumeLPerKw < 20) return ok(11.2);
  return ok(specificVolumeLPerKw < 50 ? 5.6 : 0.6);
}

/**
 * Whether all fill and top-up over a boiler's life has passed what the untreated allowance covers.
 *
 * Formula  total > 3 × system volume
 * Units    L
 * Valid    system 1–10 000 000 L, total 0–1e9 L; outside it an error, never an answer
 * Source   VDI 2035 Part 1:2005, as quoted in third-party manuals
 * Checked  tests/domain/water/fillWaterLimit.test.ts
 */
export function hasTooMuchTopUp(life: {
  readonly systemVolumeL: Litre;
  readonly totalFilledL: Litre;
}): Result<boolean, OutOfRange> {
  const { systemVolumeL, totalFilledL } = life;
  const refused =
    checkRange('systemVolumeL', systemVolumeL, 1, 10_000_000) ?? checkRange('totalFilledL', totalFilledL, 0, 1e9);
  return refused ? err(refused) : ok(totalFilledL > 3 * systemVolumeL);
}

function inDh(molPerM3: number): number {
  const dh = convertHardness({ value: molPerM3, from: 'mmol/L', to: '°dH' });
  if (!dh.ok) throw new Error('a table cell left the range of hardness');
  return dh.value;
}
