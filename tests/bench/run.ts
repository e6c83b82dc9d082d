/**
 * Prints every benchmark with its ratio and goal. Usage: npm run bench [-- --only planner] [-- --check];
 * with --check a missed goal is an error. All of it takes some eight minutes.
 */

import { buildThreads } from '../support/buildThreads.ts';
import { type BenchResult, isMet } from './benchResult.ts';
import { benchBoard } from './board.bench.ts';
import { benchDues } from './dues.bench.ts';
import { benchImports } from './imports.bench.ts';
import { benchPacket } from './packet.bench.ts';
import { benchPlanner } from './planner.bench.ts';
import { benchStartup } from './startup.bench.ts';
import { benchStore } from './store.bench.ts';
import { benchTyping } from './typing.bench.ts';

const BENCHES: Readonly<Record<string, () => Promise<readonly BenchResult[]>>> = {
  startup: benchStartup,
  store: benchStore,
  dues: benchDues,
  imports: benchImports,
  packet: benchPacket,
  board: benchBoard,
  typing: benchTyping,
  planner: benchPlanner,
};

const only = process.argv.includes('--only') ? process.argv[process.argv.indexOf('--only') + 1] : undefined;
if (only !== undefined && !(only in BENCHES)) {
  process.stderr.write(`no benchmark ${only}; there are ${Object.keys(BENCHES).join(', ')}\n`);
  process.exit(2);
}
const removeThreads = await buildThreads();
const results: BenchResult[] = [];
for (const [name, bench] of Object.entries(BENCHES)) {
  if (only === undefined || only === name) results.push(...(await bench()));
}
removeThreads();
for (const result of results) {
  const unit = result.unit ?? 'ms';
  const ours = `${result.ms.toFixed(3)} ${unit}`;
  const against =
    result.rawMs === null
      ? `goal ${result.goal} ${unit}`
      : `${result.rawMs.toFixed(3)} ms bare, ratio ${(result.ms / result.rawMs).toFixed(2)}, goal ${result.goal}`;
  process.stdout.write(
    `${isMet(result) ? 'met   ' : 'MISSED'} ${result.name.padEnd(66)} ${ours.padStart(12)}   ${against}\n`,
  );
}
if (process.argv.includes('--check') && !results.every(isMet)) process.exit(1);
