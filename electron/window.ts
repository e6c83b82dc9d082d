/** The one place where a window is made: a sandboxed page that reaches nothing but what the preload hands it. */
import { BrowserWindow, type BrowserWindowConstructorOptions } from 'electron';
import { appPage } from './navigationPolicy.ts';

export function windowOptions(preloadPath: string, hasDevTools: boolean): BrowserWindowConstructorOptions {
  return {
    width: 1280,
    height: 840,
    minWidth: 480,
    minHeight: 480,
    show: false,
    title: 'Lightoff',
    webPreferences: {
      preload: preloadPath,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      // Fetches word lists from the net.
      spellcheck: false,
      devTools: hasDevTools,
    },
  };
}

export function createWindow(preloadPath: string, hasDevTools: boolean): BrowserWindow {
  const window = new BrowserWindow(windowOptions(preloadPath, hasDevTools));
  window.once('ready-to-show', () => window.show());
  void window.loadURL(appPage);
  return window;
}
