/** Opens a window of the double: as the shell sees it, and as a test turns it. */
import { BrowserWindow } from 'electron';
import { state, type WebContentsDouble } from './electronDouble.ts';

export function openWindowDouble(): {
  readonly contents: BrowserWindow['webContents'];
  readonly double: WebContentsDouble;
} {
  const { webContents } = new BrowserWindow();
  const double = state.windows.at(-1)?.webContents;
  if (double === undefined) throw new Error('the double was not used');
  return { contents: webContents, double };
}
