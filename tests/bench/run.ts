/** Prints every benchmark with its ratio and goal. Usage: npm run bench [-- --check]; with --check a missed goal is an error. */

import { type BenchResult, isMet } from './benchResult.ts';
import { benchBoard } from './board.bench.ts';
import { benchDues } from './dues.bench.ts';
import { benchPacket } from './packet.bench.ts';
import { benchStore } from './store.bench.ts';

const results: readonly BenchResult[] = [
  ...(await benchStore()),
  ...(await benchDues()),
  ...(await benchPacket()),
  ...(await benchBoard()),
];
for (const result of results) {
  const ours = `${result.ms.toFixed(3)} ms`;
  const against =
    result.rawMs === null
      ? `goal ${result.goal} ms`
      : `${result.rawMs.toFixed(3)} ms bare, ratio ${(result.ms / result.rawMs).toFixed(2)}, goal ${result.goal}`;
  process.stdout.write(
    `${isMet(result) ? 'met   ' : 'MISSED'} ${result.name.padEnd(66)} ${ours.padStart(12)}   ${against}\n`,
  );
}
if (process.argv.includes('--check') && !results.every(isMet)) process.exit(1);
