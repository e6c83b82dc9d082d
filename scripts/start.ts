/** Starts the app: builds what is missing or old, then opens the desktop shell, or serves a browser where that can't run. Usage: npm start */
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { assertNever } from '../domain/result.ts';
import { findAppRoot } from '../electron/appRoot.ts';
import { type LaunchOptions, launchHelp, parseLaunchOptions } from '../electron/launchOptions.ts';
import { isBuildNeeded } from './buildCheck.ts';
import { chooseShell, fetchElectron, findElectron, type NoShell } from './electronRuntime.ts';

/** A shell that ends sooner than this with an error could not start at all. */
const startsWithinMs = 10_000;

const parsed = parseLaunchOptions(process.argv.slice(2));
if (!parsed.ok) {
  const why = parsed.error.code === 'bad-port' ? `not a port: ${parsed.error.given}` : parsed.error.message;
  process.stderr.write(`${why}\n\n${launchHelp}\n`);
  process.exit(2);
}
if (parsed.value.help) {
  process.stdout.write(`${launchHelp}\n`);
  process.exit(0);
}
try {
  await start(parsed.value);
} catch (error) {
  process.stderr.write(`Lightoff cannot start: ${error instanceof Error ? error.message : String(error)}\n`);
  process.exit(1);
}

async function start(options: LaunchOptions): Promise<void> {
  const appRoot = findAppRoot(import.meta.url);
  if (isBuildNeeded(appRoot)) {
    say('Building the app: a minute at most, only after a change.');
    // Loaded only when needed, as is the core below: a start should be quick.
    const { buildApp } = await import('./buildApp.ts');
    await buildApp(appRoot, 'error');
  }
  if (!options.inBrowser) {
    const isFetchWanted = options.fetchElectron || process.env['LIGHTOFF_FETCH_ELECTRON'] === '1';
    if (isFetchWanted && findElectron(appRoot, process.env) === null) fetchElectron(appRoot);
    const shell = chooseShell(appRoot, {
      platform: process.platform,
      environment: process.env,
      userNumber: process.getuid?.() ?? null,
    });
    if (!shell.ok) say(`${wordsFor(shell.error)} Serving the app for a browser instead.`);
    else if (await runShell(shell.value, appRoot, options)) return;
    else say('The desktop shell did not start. Serving the app for a browser instead.');
  }
  const built = pathToFileURL(join(appRoot, 'out', 'shell', 'serveInBrowser.js')).href;
  const { serveInBrowser }: typeof import('../electron/serveInBrowser.ts') = await import(built);
  await serveInBrowser(options);
}

/** Resolves when the shell has ended; false when it never really started. */
function runShell(binary: string, appRoot: string, options: LaunchOptions): Promise<boolean> {
  const environment = { ...process.env };
  // Left over from another program, it would turn the shell into plain Node.
  delete environment['ELECTRON_RUN_AS_NODE'];
  const args = [appRoot, ...(options.startInDemo ? ['--demo'] : []), ...dataArgs(options)];
  const startedAt = performance.now();
  return new Promise((resolve) => {
    const child = spawn(binary, args, { stdio: 'inherit', env: environment });
    // Ctrl-C reaches the shell too, which closes its store; this process only waits for that.
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => child.kill(signal));
    child.on('error', () => resolve(false));
    child.on('exit', (code, signal) => {
      const isSound = code === 0 || signal === 'SIGINT' || signal === 'SIGTERM';
      resolve(isSound || performance.now() - startedAt > startsWithinMs);
    });
  });
}

function dataArgs(options: LaunchOptions): readonly string[] {
  return options.dataFolder === null ? [] : [`--data=${options.dataFolder}`];
}

function wordsFor(why: NoShell): string {
  switch (why) {
    case 'no-runtime':
      return 'The desktop shell’s runtime (Electron) is not installed here.';
    case 'no-display':
      return 'There is no display for the desktop shell.';
    case 'runs-as-root':
      return 'The desktop shell does not run as root.';
    default:
      return assertNever(why);
  }
}

function say(line: string): void {
  process.stdout.write(`${line}\n`);
}
