/** Which tests of the trade's numbers reach a source file, nearest first: they are asked first whether a change shows. */
import { globSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';

const TESTS = ['tests/checks/**/*.test.ts', 'tests/domain/{combustion,gas,hydronics,water}/**/*.test.ts'];

export type TestsOf = (sourceFile: string) => readonly string[];

export function readTestsOf(root: string): TestsOf {
  const depths = new Map(TESTS.flatMap((one) => globSync(one, { cwd: root })).map((test) => [test, reach(root, test)]));
  return (sourceFile) =>
    [...depths]
      .flatMap(([test, files]) => {
        const depth = files.get(sourceFile);
        return depth === undefined ? [] : [{ test, depth, size: files.size }];
      })
      .sort((a, b) => a.depth - b.depth || a.size - b.size)
      .map(({ test }) => test);
}

/** Every file a test imports, with how many steps away it is. */
function reach(root: string, test: string): ReadonlyMap<string, number> {
  const depths = new Map([[test, 0]]);
  const queue = [test];
  for (let file = queue.shift(); file !== undefined; file = queue.shift()) {
    for (const next of importsOf(root, file)) {
      if (depths.has(next)) continue;
      depths.set(next, (depths.get(file) ?? 0) + 1);
      queue.push(next);
    }
  }
  return depths;
}

function importsOf(root: string, file: string): readonly string[] {
  const text = readFileSync(join(root, file), 'utf8');
  return [...text.matchAll(/(?:from|import)\s*\(?'(\.[^']+\.ts)'/g)].map(([, path]) =>
    normalize(join(dirname(file), path ?? '')),
  );
}
