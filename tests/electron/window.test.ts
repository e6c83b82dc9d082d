import { describe, expect, it } from 'vitest';
import { appPage } from '../../electron/navigationPolicy.ts';
import { createWindow, windowOptions } from '../../electron/window.ts';
import { state } from '../support/electronDouble.ts';

describe('windowOptions', () => {
  const { webPreferences } = windowOptions('/app/preload.cjs', false);

  it('isolates the page from Node and from the preload', () => {
    expect(webPreferences).toMatchObject({
      preload: '/app/preload.cjs',
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webviewTag: false,
    });
  });

  it('keeps the web’s own guards up and adds no half-finished feature', () => {
    expect(webPreferences).toMatchObject({
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
    });
    expect(webPreferences).not.toHaveProperty('enableBlinkFeatures');
    expect(webPreferences).not.toHaveProperty('disableBlinkFeatures');
  });

  it('has developer tools only where it is told so', () => {
    expect(webPreferences?.devTools).toBe(false);
    expect(windowOptions('/app/preload.cjs', true).webPreferences?.devTools).toBe(true);
  });
});

describe('createWindow', () => {
  it('loads the app’s own page and shows it when it is drawn', async () => {
    createWindow('/app/preload.cjs', false);
    const window = state.windows.at(-1);
    await Promise.resolve();
    await Promise.resolve();
    expect(window?.webContents.mainFrame.url).toBe(appPage);
    expect(window?.done).toEqual(['show']);
  });
});
