/**
 * Shows a window of the Electron double in a real Chromium: the real preload runs in its page, the app's own protocol
 * handler answers its requests, the shell's real guards judge where it goes, and ports reach it.
 */
import type { Browser, BrowserContext, Page, Route } from 'playwright-core';
import { type BrowserWindow, type MessagePortMain, state } from './electronDouble.ts';
import { fromTagged, toTagged } from './taggedJson.ts';

/** Chromium knows no app: scheme outside Electron; this stands for it in the page only. */
const pageOrigin = 'https://lightoff.test';
const appOrigin = 'app://lightoff';

type PageSide = {
  readonly testDeliver: (channel: string, portId: number | null) => void;
  readonly testDeliverToPort: (portId: number, message: string) => void;
};

export type ShownPage = { readonly page: Page; readonly context: BrowserContext };

/** Every later `loadURL` opens a page. `preloadScript` is the bundled preload, CommonJS; `electronScript` defines `electronInPage`. */
export function showWindowsIn(
  browser: Browser,
  scripts: { readonly preloadScript: string; readonly electronScript: string },
): { readonly shown: ShownPage[] } {
  const shown: ShownPage[] = [];
  state.showPage = async (window, url) => {
    const context = await browser.newContext();
    const page = await context.newPage();
    await connectIpc(page, window);
    await page.addInitScript(`(() => {
      if (window !== window.top || location.origin !== ${JSON.stringify(pageOrigin)}) return;
      ${scripts.electronScript}
      const require = (name) => { if (name === 'electron') return electronInPage; throw new Error('a sandboxed preload cannot require ' + name); };
      const module = { exports: {} }, exports = module.exports;
      ${scripts.preloadScript}
    })();`);
    let isFirstLoad = true;
    await context.route('**/*', async (route) => {
      const isAllowed = isFirstLoad || judgeNavigation(route, page, window);
      isFirstLoad = false;
      await answerRoute(route, isAllowed);
    });
    context.on('page', (popup) => void popup.close().catch(() => {}));
    page.on('framenavigated', (frame) => {
      if (frame === page.mainFrame()) window.webContents.mainFrame.url = toApp(frame.url());
    });
    await page.goto(url.replace(appOrigin, pageOrigin));
    shown.push({ page, context });
  };
  return { shown };
}

function toApp(url: string): string {
  return url.startsWith(`${pageOrigin}/`) ? appOrigin + url.slice(pageOrigin.length) : url;
}

/** Asks the shell's own listeners, as Electron would before it goes anywhere. */
function judgeNavigation(route: Route, page: Page, window: BrowserWindow): boolean {
  const request = route.request();
  if (!request.isNavigationRequest()) return true;
  const url = toApp(request.url());
  const frame = frameOf(route);
  if (frame === null || frame.page() !== page) {
    return window.webContents.windowOpenHandler?.({ url }).action === 'allow';
  }
  const isMainFrame = frame === page.mainFrame();
  return !window.webContents.tryToNavigate(url, isMainFrame ? 'will-navigate' : 'will-frame-navigate', isMainFrame);
}

/** A page that is only being opened has no frame yet. */
function frameOf(route: Route) {
  try {
    return route.request().frame();
  } catch {
    return null;
  }
}

async function answerRoute(route: Route, isAllowed: boolean): Promise<void> {
  const request = route.request();
  const url = toApp(request.url());
  const handler = state.schemes.get(new URL(url).protocol.slice(0, -1));
  // An empty answer leaves a page where it is, as a prevented navigation does.
  if (!isAllowed) return route.fulfill({ status: 204 });
  if (handler === undefined) return route.abort();
  const response = await handler({ url, method: request.method() });
  const body = Buffer.from(await response.arrayBuffer());
  await route.fulfill({ status: response.status, headers: Object.fromEntries(response.headers), body });
}

async function connectIpc(page: Page, window: BrowserWindow): Promise<void> {
  const { webContents } = window;
  const ports = new Map<number, MessagePortMain>();
  /** In the order they were sent, and never after the page is gone. */
  let queue: Promise<unknown> = Promise.resolve();
  const inPage = (act: () => Promise<unknown>): void => {
    queue = queue.then(act).catch(() => {});
  };
  await page.exposeBinding('testInvoke', async ({ frame }, channel: string, args: string) => {
    const senderFrame = frame === page.mainFrame() ? webContents.mainFrame : null;
    const handler = state.invokable.get(channel);
    if (handler === undefined) throw new Error(`nobody handles ${channel}`);
    return toTagged(await handler({ sender: webContents, senderFrame }, ...(fromTagged(args) as unknown[])));
  });
  await page.exposeBinding('testPortPost', (_source, portId: number, message: string) =>
    ports.get(portId)?.postMessage(fromTagged(message)),
  );
  webContents.deliver = (channel, [port]) => {
    const portId = port === undefined ? null : ports.size + 1;
    if (port !== undefined && portId !== null) {
      ports.set(portId, port);
      port.on('message', ({ data }: { readonly data: unknown }) => {
        const message = toTagged(data);
        inPage(() =>
          page.evaluate(([id, text]) => (globalThis as object as PageSide).testDeliverToPort(id, text), [
            portId,
            message,
          ] as const),
        );
      });
      port.start();
    }
    inPage(() =>
      page.evaluate(([name, id]) => (globalThis as object as PageSide).testDeliver(name, id), [
        channel,
        portId,
      ] as const),
    );
  };
}
