import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { defaultDataFolder } from '../../electron/dataFolder.ts';

describe('defaultDataFolder', () => {
  it('follows the XDG base directory specification on Linux', () => {
    expect(defaultDataFolder('linux', { XDG_DATA_HOME: '/srv/data' }, '/home/ana')).toBe('/srv/data/lightoff');
    // "If $XDG_DATA_HOME is either not set or empty, a default equal to $HOME/.local/share should be used."
    expect(defaultDataFolder('linux', {}, '/home/ana')).toBe('/home/ana/.local/share/lightoff');
    expect(defaultDataFolder('linux', { XDG_DATA_HOME: '' }, '/home/ana')).toBe('/home/ana/.local/share/lightoff');
    // "All paths set in these environment variables must be absolute. If […] relative […] consider the path invalid and ignore it."
    expect(defaultDataFolder('linux', { XDG_DATA_HOME: 'data' }, '/home/ana')).toBe('/home/ana/.local/share/lightoff');
  });

  it('stays on the machine on Windows and goes where programs keep their data on macOS', () => {
    expect(defaultDataFolder('win32', { LOCALAPPDATA: 'D:\\Local', APPDATA: 'D:\\Roaming' }, 'C:\\Users\\ana')).toBe(
      'D:\\Local\\Lightoff',
    );
    expect(defaultDataFolder('win32', {}, 'C:\\Users\\ana')).toBe('C:\\Users\\ana\\AppData\\Local\\Lightoff');
    expect(defaultDataFolder('darwin', {}, '/Users/ana')).toBe('/Users/ana/Library/Application Support/Lightoff');
  });

  it('goes where it is told', () => {
    expect(defaultDataFolder('linux', { LIGHTOFF_DATA: '/mnt/store' }, '/home/ana')).toBe(resolve('/mnt/store'));
    expect(defaultDataFolder('darwin', { LIGHTOFF_DATA: 'here' }, '/Users/ana')).toBe(resolve('here'));
  });
});
