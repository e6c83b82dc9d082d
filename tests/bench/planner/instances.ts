/** The planner's search on published instances: Solomon's (in the repository) and the technicians' (from a folder outside). */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { PILLAC_NAMES, PILLAC_OTHER_THOUSANDTHS, readPillac } from '../../support/planner/pillac.ts';
import type { RoutingInstance } from '../../support/planner/routingInstance.ts';
import { searchFor } from '../../support/planner/searchFor.ts';
import { readSolomon, SOLOMON_BEST_TENTHS, SOLOMON_NAMES, type SolomonSize } from '../../support/planner/solomon.ts';
import { APP_ROOT } from '../../support/testCore.ts';
import type { BenchResult } from '../benchResult.ts';

const SEEDS = [1, 2, 3, 4, 5].slice(0, Number(process.env['LIGHTOFF_BENCH_SEEDS'] ?? 5));

type Wanted = { readonly goal: string; readonly mean: number; readonly worst: number };

export function benchSolomon(size: SolomonSize, limitMs: number, wanted: Wanted): readonly BenchResult[] {
  const what = `Solomon, ${size} customers`;
  return gapLines(
    what,
    SOLOMON_NAMES.map((name) => ({
      name,
      instance: readSolomon(name, size),
      reference: SOLOMON_BEST_TENTHS[name][size],
    })),
    limitMs,
    wanted,
  );
}

export function benchPillac(limitMs: number, wanted: Wanted): readonly BenchResult[] {
  const folder = process.env['LIGHTOFF_TRSP'] ?? join(APP_ROOT, '..', 'shared', 'data', 'trsp');
  if (!existsSync(folder)) {
    process.stdout.write(
      `       ${wanted.goal} left out: no technician instances at ${folder}; name their folder in LIGHTOFF_TRSP\n`,
    );
    return [];
  }
  return gapLines(
    'technicians with skills, against another program',
    PILLAC_NAMES.map((name) => ({
      name,
      instance: readPillac(folder, name),
      reference: PILLAC_OTHER_THOUSANDTHS[name],
    })),
    limitMs,
    wanted,
  );
}

function gapLines(
  what: string,
  list: readonly { readonly name: string; readonly instance: RoutingInstance; readonly reference: number }[],
  limitMs: number,
  wanted: Wanted,
): readonly BenchResult[] {
  const gaps = list.flatMap(({ name, instance, reference }) => {
    const found = SEEDS.map((seed) => searchFor(instance, seed, limitMs));
    // A plan that breaks a rule has no length.
    const own = found.map(({ length }) =>
      length === null ? Number.POSITIVE_INFINITY : (100 * length) / reference - 100,
    );
    const rounds = found.reduce((sum, one) => sum + one.rounds, 0) / found.length;
    process.stdout.write(
      `       ${wanted.goal} ${name.padEnd(6)} ${own.map((gap) => gap.toFixed(2).padStart(6)).join(' ')} %, ${Math.round(rounds)} rounds\n`,
    );
    return own;
  });
  const name = `${wanted.goal} ${what}, ${limitMs / 1000} s of processor, ${SEEDS.length} seeds`;
  const mean = gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length;
  return [
    { name: `${name}: mean gap`, ms: mean, rawMs: null, goal: wanted.mean, unit: '%' },
    { name: `${name}: worst gap`, ms: Math.max(...gaps), rawMs: null, goal: wanted.worst, unit: '%' },
  ];
}
