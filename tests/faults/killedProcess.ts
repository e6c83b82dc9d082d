/** A process that says a line for each thing it has done, killed at a moment that is handed in. */
import { spawn } from 'node:child_process';

/**
 * The whole lines it said before it was killed: `afterMs` after the first one that begins with `from`, or after its start when
 * that is null. One that ends by itself is an error.
 */
export function killedProcess(options: {
  readonly args: readonly string[];
  readonly env?: Readonly<Record<string, string>>;
  readonly from: string | null;
  readonly afterMs: number;
}): Promise<readonly string[]> {
  const { args, env = {}, from, afterMs } = options;
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, {
      stdio: ['ignore', 'pipe', 'pipe'],
      env: { ...process.env, ...env },
    });
    let output = '';
    let complaint = '';
    let isCounting = false;
    const kill = () => {
      isCounting = true;
      setTimeout(() => child.kill('SIGKILL'), afterMs);
    };
    if (from === null) kill();
    child.stderr.on('data', (bytes: Buffer) => {
      complaint += bytes.toString();
    });
    child.stdout.on('data', (bytes: Buffer) => {
      output += bytes.toString();
      if (!isCounting && from !== null && output.split('\n').some((line) => line.startsWith(from))) kill();
    });
    child.on('exit', (code) => {
      if (code !== null) reject(new Error(`the process ended by itself: ${complaint}`));
      // The last line may be cut: only whole ones were said.
      else resolve(output.split('\n').slice(0, -1));
    });
  });
}
