/** One line of the benchmark: our time beside a bare one measured in the same run, and the goal for their ratio. */
export type BenchResult = {
  readonly name: string;
  /** Milliseconds, or what `unit` says. */
  readonly ms: number;
  /** The bare alternative; null where the goal is a time. */
  readonly rawMs: number | null;
  /** Largest ratio, or largest milliseconds where there is no bare alternative. */
  readonly goal: number;
  readonly unit?: string;
};

export function isMet(result: BenchResult): boolean {
  return (result.rawMs === null ? result.ms : result.ms / result.rawMs) <= result.goal;
}

/** Median of several rounds: a busy machine disturbs single ones. */
export async function medianMs(rounds: number, work: () => unknown): Promise<number> {
  const times: number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    const start = performance.now();
    await work();
    times.push(performance.now() - start);
  }
  return times.sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN;
}

/** Alternates ours and the bare one, so that a slow moment hits both. */
export async function medianPair(
  rounds: number,
  ours: () => unknown,
  bare: () => unknown,
): Promise<{ readonly ms: number; readonly rawMs: number }> {
  const oursMs: number[] = [];
  const bareMs: number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    oursMs.push(await medianMs(1, ours));
    bareMs.push(await medianMs(1, bare));
  }
  const middle = (list: number[]): number => list.sort((a, b) => a - b)[Math.floor(list.length / 2)] ?? Number.NaN;
  return { ms: middle(oursMs), rawMs: middle(bareMs) };
}

/** The 95th percentile over different inputs, each asked once of both. */
export async function p95Pair<T>(
  inputs: readonly T[],
  ours: (input: T) => unknown,
  bare: (input: T) => unknown,
): Promise<{ readonly ms: number; readonly rawMs: number }> {
  const oursMs: number[] = [];
  const bareMs: number[] = [];
  for (const input of inputs) {
    oursMs.push(await medianMs(1, () => ours(input)));
    bareMs.push(await medianMs(1, () => bare(input)));
  }
  const p95 = (list: number[]): number => list.sort((a, b) => a - b)[Math.floor(list.length * 0.95)] ?? Number.NaN;
  return { ms: p95(oursMs), rawMs: p95(bareMs) };
}
