/**
 * Changes every number and operator of the trade's formulas in turn, in a copy of the project, and counts how many changes
 * make a test fail. Usage: npm run mutation [-- --only gas] [-- --every 7]; with --check too many survivors are an error.
 */
import { cpSync, globSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { createVitest, type TestSpecification } from 'vitest/node';
import { applyMutant, findMutants } from './findMutants.ts';
import { guardLoops } from './guardLoops.ts';
import { readTestsOf } from './testsOf.ts';

/** Of all changes, so many must be noticed. */
const GOAL = 0.9;
const SUBJECTS = ['combustion', 'gas', 'hydronics', 'water'];

type Survivor = { readonly file: string; readonly line: string; readonly original: string; readonly nth: number };
type Known = Survivor & { readonly reason: string };

const { values: options } = parseArgs({
  options: { only: { type: 'string' }, every: { type: 'string', default: '1' }, check: { type: 'boolean' } },
});
const project = new URL('../..', import.meta.url).pathname;
const known: readonly Known[] = JSON.parse(readFileSync(join(project, 'tests/mutation/survivors.json'), 'utf8'));
const copy = mkdtempSync(join(tmpdir(), 'lightoff-mutation-'));
try {
  process.exitCode = await run();
} finally {
  rmSync(copy, { recursive: true, force: true });
}

async function run(): Promise<number> {
  for (const part of ['domain', 'tests', 'assets', 'electron', 'vitest.config.ts', 'tsconfig.json', 'package.json']) {
    cpSync(join(project, part), join(copy, part), { recursive: true });
  }
  symlinkSync(join(project, 'node_modules'), join(copy, 'node_modules'));
  const testsOf = readTestsOf(copy);
  const sources = SUBJECTS.filter((one) => options.only === undefined || one === options.only).flatMap((subject) =>
    globSync(`domain/${subject}/**/*.ts`, { cwd: copy }).sort(),
  );
  const vitest = await createVitest('test', {
    root: copy,
    watch: false,
    project: ['pure'],
    reporters: [],
    bail: 1,
    pool: 'threads',
    isolate: false,
    maxWorkers: 1,
    // Endless loops are stopped by their own guard; a test that is only slow, on a busy machine, has noticed nothing.
    testTimeout: 60_000,
  });
  await vitest.standalone();
  const specs = new Map((await vitest.globTestSpecifications()).map((one) => [one.moduleId, one]));
  const unchanged = await vitest.runTestSpecifications(
    [...specs.values()].filter(({ moduleId }) => isAskedOfAnyFile(moduleId)),
  );
  const failing = unchanged.testModules.filter((one) => !one.ok()).map(({ moduleId }) => moduleId);
  if (failing.length > 0) throw new Error(`these fail before anything is changed: ${failing.join(', ')}`);
  const totals = new Map<string, { tried: number; noticed: number }>();
  const survivors: Survivor[] = [];
  let count = 0;
  for (const file of sources) {
    const path = join(copy, file);
    const source = readFileSync(path, 'utf8');
    const tests = testsOf(file).flatMap((test) => specs.get(join(copy, test)) ?? []);
    if (await isNoticedBy(tests, path, source, source)) throw new Error(`${file}: its tests fail with nothing changed`);
    for (const mutant of findMutants(source)) {
      count += 1;
      if (count % Number(options.every) !== 0) continue;
      const isNoticed = await isNoticedBy(tests, path, source, applyMutant(source, mutant));
      const what = `${file.split('/')[1]}, ${mutant.kind}s`;
      const total = totals.get(what) ?? { tried: 0, noticed: 0 };
      totals.set(what, { tried: total.tried + 1, noticed: total.noticed + (isNoticed ? 1 : 0) });
      if (!isNoticed) {
        survivors.push({ file, line: mutant.lineText, original: mutant.original, nth: mutant.nth });
        process.stdout.write(
          `survives  ${file}:${mutant.line}  ${mutant.original} → ${mutant.changed}   ${mutant.lineText}\n`,
        );
      }
    }
  }
  await vitest.close();
  return report(totals, survivors);

  function isAskedOfAnyFile(moduleId: string): boolean {
    return sources.some((file) => testsOf(file).some((test) => join(copy, test) === moduleId));
  }

  async function isNoticedBy(
    tests: readonly TestSpecification[],
    path: string,
    source: string,
    changed: string,
  ): Promise<boolean> {
    writeFileSync(path, guardLoops(changed));
    vitest.invalidateFile(path);
    try {
      for (const test of tests) {
        const { testModules, unhandledErrors } = await vitest.runTestSpecifications([test]);
        // The answer also holds what earlier runs gave.
        const own = testModules.find(({ moduleId }) => moduleId === test.moduleId);
        if (unhandledErrors.length > 0 || own === undefined || !own.ok()) return true;
      }
      return false;
    } finally {
      writeFileSync(path, source);
      vitest.invalidateFile(path);
    }
  }
}

function report(
  totals: ReadonlyMap<string, { readonly tried: number; readonly noticed: number }>,
  survivors: readonly Survivor[],
): number {
  for (const [what, { tried, noticed }] of totals) {
    process.stdout.write(`${what.padEnd(24)} ${noticed} of ${tried} noticed (${percent(noticed, tried)})\n`);
  }
  const tried = [...totals.values()].reduce((sum, one) => sum + one.tried, 0);
  const unexplained = survivors.filter((one) => !known.some((other) => isSame(one, other)));
  process.stdout.write(
    `${tried - survivors.length} of ${tried} noticed (${percent(tried - survivors.length, tried)}), goal ${percent(GOAL, 1)}; ` +
      `${survivors.length - unexplained.length} survivors with a known reason, ${unexplained.length} without\n`,
  );
  return options.check === true && tried - survivors.length < GOAL * tried ? 1 : 0;
}

function isSame(one: Survivor, other: Survivor): boolean {
  return one.file === other.file && one.line === other.line && one.original === other.original && one.nth === other.nth;
}

function percent(part: number, whole: number): string {
  return `${((100 * part) / Math.max(1, whole)).toFixed(1)} %`;
}
