/** The desktop shell's entry: finds the app and its data, then starts the shell. */
import { homedir } from 'node:os';
import { join } from 'node:path';
import { findAppRoot } from './appRoot.ts';
import { defaultDataFolder } from './dataFolder.ts';
import { pickShellOptions } from './launchOptions.ts';
import { startShell } from './startShell.ts';

const appRoot = findAppRoot(import.meta.url);
const { dataFolder, startInDemo } = pickShellOptions(process.argv.slice(1));

startShell({
  location: {
    appRoot,
    dataFolder: dataFolder ?? defaultDataFolder(process.platform, process.env, homedir()),
    startInDemo,
  },
  rendererFolder: join(appRoot, 'out', 'renderer'),
  shellFolder: join(appRoot, 'out', 'shell'),
});
