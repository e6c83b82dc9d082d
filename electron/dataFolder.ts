/** Where the store lies when nobody says otherwise: the folder that each system keeps for a program's own local data. */
import { posix, resolve, win32 } from 'node:path';

export type Environment = Readonly<Record<string, string | undefined>>;

export function defaultDataFolder(platform: NodeJS.Platform, environment: Environment, homeFolder: string): string {
  const chosen = environment['LIGHTOFF_DATA'];
  if (chosen) return resolve(chosen);
  if (platform === 'win32') {
    // Not the roaming folder: a database must not travel with a login.
    const local = environment['LOCALAPPDATA'] || win32.join(homeFolder, 'AppData', 'Local');
    return win32.join(local, 'Lightoff');
  }
  if (platform === 'darwin') return posix.join(homeFolder, 'Library', 'Application Support', 'Lightoff');
  const dataHome = environment['XDG_DATA_HOME'];
  // The XDG base directory specification: a relative path is to be ignored.
  const base = dataHome && posix.isAbsolute(dataHome) ? dataHome : posix.join(homeFolder, '.local', 'share');
  return posix.join(base, 'lightoff');
}
