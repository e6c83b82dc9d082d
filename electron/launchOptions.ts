/** What may be said when the app is started, read the same way by `npm start` and by the desktop shell. */
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { err, ok, type Result } from '../domain/result.ts';

export type LaunchOptions = {
  /** Null: the usual one, or any free one when that is taken. */
  readonly port: number | null;
  /** Null: the system's usual place. */
  readonly dataFolder: string | null;
  readonly inBrowser: boolean;
  readonly startInDemo: boolean;
  readonly fetchElectron: boolean;
  readonly help: boolean;
};

export type LaunchProblem =
  | { readonly code: 'bad-flag'; readonly message: string }
  | { readonly code: 'bad-port'; readonly given: string };

export const launchHelp = `Usage: npm start -- [options]
  --data DIR        keep the data in DIR (also: LIGHTOFF_DATA)
  --demo            open the demo company; the real data stays untouched
  --browser         serve the app for a browser, without trying the desktop shell
  --port N          port of the browser host on 127.0.0.1
  --fetch-electron  try once, for a minute at most, to fetch the desktop shell's runtime (also: LIGHTOFF_FETCH_ELECTRON=1)
  --help            this text`;

const flags = {
  port: { type: 'string' },
  data: { type: 'string' },
  browser: { type: 'boolean' },
  demo: { type: 'boolean' },
  'fetch-electron': { type: 'boolean' },
  help: { type: 'boolean' },
} as const;

export function parseLaunchOptions(args: readonly string[]): Result<LaunchOptions, LaunchProblem> {
  try {
    const { values } = parseArgs({ args: [...args], options: flags });
    const port = values.port === undefined ? null : parsePort(values.port);
    if (port === 'bad') return err({ code: 'bad-port', given: values.port ?? '' });
    return ok({
      port,
      dataFolder: values.data ? resolve(values.data) : null,
      inBrowser: values.browser ?? false,
      startInDemo: values.demo ?? false,
      fetchElectron: values['fetch-electron'] ?? false,
      help: values.help ?? false,
    });
  } catch (error) {
    return err({ code: 'bad-flag', message: error instanceof Error ? error.message : String(error) });
  }
}

/** The shell's own arguments stand among the runtime's switches: takes what it knows and leaves the rest. */
export function pickShellOptions(args: readonly string[]): Pick<LaunchOptions, 'dataFolder' | 'startInDemo'> {
  const { values } = parseArgs({ args: [...args], options: flags, strict: false });
  return {
    dataFolder: typeof values.data === 'string' && values.data !== '' ? resolve(values.data) : null,
    startInDemo: values.demo === true,
  };
}

function parsePort(text: string): number | 'bad' {
  const port = Number(text);
  return /^\d{1,5}$/.test(text) && port <= 65_535 ? port : 'bad';
}
