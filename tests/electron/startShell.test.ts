import { EventEmitter } from 'node:events';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { connectChannel, portMessage } from '../../electron/contract/wire.ts';
import { startShell } from '../../electron/startShell.ts';
import { app, type BrowserWindow, FrameDouble, state, utilityProcess } from '../support/electronDouble.ts';
import { makePageFolder } from '../support/pageFolder.ts';

/** Stands for the core's process, which this test does not need. */
class IdleChild extends EventEmitter {
  readonly pid = 7;
  readonly heard: unknown[] = [];
  postMessage(message: { readonly kind: string }): void {
    this.heard.push(message);
    if (message.kind === 'close') queueMicrotask(() => this.emit('exit', 0));
  }
  kill(): boolean {
    return true;
  }
}

const page = makePageFolder();
const child = new IdleChild();
const location = { appRoot: '/app', dataFolder: '/data', startInDemo: true };
let window: BrowserWindow;

beforeAll(async () => {
  Object.assign(utilityProcess, { fork: () => child });
  startShell({ location, rendererFolder: page.folder, shellFolder: '/app/out/shell' });
  window = await vi.waitUntil(() => state.windows.at(0), { timeout: 20_000 });
});
afterAll(() => page.remove());

describe('startShell', () => {
  it('sandboxes every renderer and registers its scheme before the start', () => {
    expect(state.isSandboxed).toBe(true);
    expect(state.privilegedSchemes).toHaveLength(1);
  });

  it('opens one window on its own page, served by its own scheme', async () => {
    expect(state.windows).toHaveLength(1);
    expect([...state.schemes.keys()]).toEqual(['app']);
    const response = await state.schemes.get('app')?.({ url: 'app://lightoff/index.html', method: 'GET' });
    expect(await response?.text()).toContain('<title>page</title>');
  });

  it('opens the store in the core’s process', () => {
    expect(child.heard[0]).toEqual({ kind: 'open', ...location });
  });

  it('grants the camera to its own page, without sound, and nothing else: asked for or looked up', () => {
    const handler = (name: string) => state.permissionHandlers.get(name) as (...args: unknown[]) => unknown;
    const ownPage = 'app://lightoff/index.html#/visits';
    const asked = (permission: string, details: object): unknown => {
      const answers: unknown[] = [];
      handler('request')(null, permission, (answer: unknown) => answers.push(answer), details);
      expect(answers).toHaveLength(1);
      return answers[0];
    };
    expect(asked('media', { requestingUrl: ownPage, mediaTypes: ['video'] })).toBe(true);
    expect(handler('check')(null, 'media', 'app://lightoff/', { mediaType: 'video' })).toBe(true);
    for (const mediaTypes of [['audio'], ['video', 'audio'], [], undefined])
      expect(asked('media', { requestingUrl: ownPage, mediaTypes })).toBe(false);
    for (const mediaType of ['audio', 'unknown', undefined])
      expect(handler('check')(null, 'media', 'app://lightoff/', { mediaType })).toBe(false);
    for (const requestingUrl of [
      'https://example.com/',
      'app://lightoff.example/index.html',
      'file:///index.html',
      undefined,
    ])
      expect(asked('media', { requestingUrl, mediaTypes: ['video'] })).toBe(false);
    for (const origin of ['https://example.com', 'app://lightoff.example', ''])
      expect(handler('check')(null, 'media', origin, { mediaType: 'video' })).toBe(false);
    for (const permission of ['geolocation', 'notifications', 'clipboard-read', 'openExternal', 'usb', 'fullscreen']) {
      expect(asked(permission, { requestingUrl: ownPage, mediaTypes: ['video'] })).toBe(false);
      expect(handler('check')(null, permission, 'app://lightoff/', { mediaType: 'video' })).toBe(false);
    }
    expect(handler('device')({})).toBe(false);
    const streams: unknown[] = [];
    handler('display')({}, (answer: unknown) => streams.push(answer));
    expect(streams).toEqual([null]);
  });

  it('keeps the window on its page and hands web, mail and phone links to the system', () => {
    const before = state.openedOutside.length;
    expect(window.webContents.tryToNavigate('app://lightoff/index.html#/visits')).toBe(false);
    expect(window.webContents.tryToNavigate('https://example.com/manual')).toBe(true);
    expect(window.webContents.tryToNavigate('mailto:office@example.com')).toBe(true);
    expect(window.webContents.tryToNavigate('file:///etc/passwd')).toBe(true);
    expect(window.webContents.tryToNavigate('app://lightoff.example/')).toBe(true);
    expect(state.openedOutside.slice(before)).toEqual(['https://example.com/manual', 'mailto:office@example.com']);
  });

  it('lets no redirect and no inner frame lead elsewhere', () => {
    expect(window.webContents.tryToNavigate('https://example.com/', 'will-redirect')).toBe(true);
    expect(window.webContents.tryToNavigate('https://example.com/', 'will-frame-navigate', false)).toBe(true);
  });

  it('opens no second window and no webview', () => {
    const before = state.openedOutside.length;
    expect(window.webContents.windowOpenHandler?.({ url: 'app://lightoff/index.html' })).toEqual({ action: 'deny' });
    expect(window.webContents.windowOpenHandler?.({ url: 'tel:+15550100' })).toEqual({ action: 'deny' });
    expect(state.openedOutside.slice(before)).toEqual(['tel:+15550100']);
    expect(window.webContents.tryToNavigate('https://example.com/', 'will-attach-webview')).toBe(true);
  });

  it('hands a port to its own page, and keeps the client over a reload', () => {
    const invoke = (senderFrame: FrameDouble, ...args: unknown[]) =>
      state.invokable.get(connectChannel)?.({ sender: window.webContents, senderFrame }, ...args);
    expect(invoke(window.webContents.mainFrame)).toBe(true);
    expect(invoke(window.webContents.mainFrame)).toBe(true);
    expect(invoke(window.webContents.mainFrame, 'unasked')).toBe(false);
    expect(invoke(new FrameDouble('https://example.com/', window.webContents.mainFrame))).toBe(false);
    const sent = window.webContents.sent.filter((message) => message.channel === portMessage);
    expect(sent.map((message) => message.ports.length)).toEqual([1, 1]);
    const clients = child.heard.flatMap((heard) =>
      typeof heard === 'object' && heard !== null && 'clientId' in heard ? [heard.clientId] : [],
    );
    expect(clients).toHaveLength(2);
    expect(new Set(clients).size).toBe(1);
  });

  it('brings the window to the front when it is started a second time', () => {
    app.emit('second-instance');
    expect(window.done).toEqual(expect.arrayContaining(['restore', 'focus']));
  });

  it('says what is wrong and ends when the store can’t be opened', () => {
    child.emit('message', { kind: 'cannot-open', why: 'the store is damaged' });
    expect(state.errorBoxes.at(-1)?.content).toContain('the store is damaged');
    expect(state.exits.at(-1)).toBe(1);
  });

  it('closes the store before it ends', async () => {
    app.emit('window-all-closed');
    expect(state.exits.at(-1)).toBe(1);
    await expect.poll(() => state.exits.at(-1)).toBe(0);
    expect(child.heard.at(-1)).toEqual({ kind: 'close' });
  });
});
