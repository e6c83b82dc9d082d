/**
 * Stands in for the package `electron` in every test: the shell's real code runs in Node against this. It keeps what was
 * registered and asked, and lets a test be the user, the page or the system. What only the real runtime can show (menus,
 * the sandbox, process isolation) is not pretended.
 */
import { EventEmitter } from 'node:events';
import { MessageChannel, type MessagePort, Worker } from 'node:worker_threads';
import type * as Electron from 'electron';
import { threadFile } from './threads.ts';

type Handler = (event: unknown, ...args: unknown[]) => unknown;
type Partly<T> = Partial<Record<keyof T, unknown>>;

/** What a test may turn and look at. */
export type DoubleState = {
  isPackaged: boolean;
  hasLock: boolean;
  readonly invokable: Map<string, Handler>;
  readonly schemes: Map<string, (request: { url: string; method: string }) => Promise<Response>>;
  readonly privilegedSchemes: unknown[];
  readonly windows: BrowserWindow[];
  readonly children: UtilityProcessDouble[];
  readonly openedOutside: string[];
  readonly errorBoxes: { title: string; content: string }[];
  readonly exits: (number | undefined)[];
  readonly exposed: Map<string, unknown>;
  readonly invoked: { channel: string; args: unknown[] }[];
  readonly permissionHandlers: Map<string, (...args: never[]) => unknown>;
  isSandboxed: boolean;
  /** Shows a window's page; without one nothing is shown. */
  showPage: ((window: BrowserWindow, url: string) => Promise<void>) | null;
};

export const state: DoubleState = {
  isPackaged: false,
  hasLock: true,
  invokable: new Map(),
  schemes: new Map(),
  privilegedSchemes: [],
  windows: [],
  children: [],
  openedOutside: [],
  errorBoxes: [],
  exits: [],
  exposed: new Map(),
  invoked: [],
  permissionHandlers: new Map(),
  isSandboxed: false,
  showPage: null,
};

class AppDouble extends EventEmitter {
  get isPackaged(): boolean {
    return state.isPackaged;
  }
  requestSingleInstanceLock(): boolean {
    return state.hasLock;
  }
  enableSandbox(): void {
    state.isSandboxed = true;
  }
  whenReady(): Promise<void> {
    return Promise.resolve();
  }
  /** As the real one: a listener of `will-quit` may hold the end off. */
  quit(): void {
    let isHeld = false;
    this.emit('will-quit', {
      preventDefault: () => {
        isHeld = true;
      },
    });
    if (!isHeld) state.exits.push(0);
  }
  exit(code?: number): void {
    state.exits.push(code);
  }
}
export const app = new AppDouble() satisfies Partly<Electron.App>;

export class FrameDouble {
  url: string;
  readonly parent: FrameDouble | null;
  constructor(url: string, parent: FrameDouble | null) {
    this.url = url;
    this.parent = parent;
  }
}

export class WebContentsDouble extends EventEmitter {
  readonly mainFrame = new FrameDouble('about:blank', null);
  readonly sent: { channel: string; message: unknown; ports: readonly MessagePortMain[] }[] = [];
  windowOpenHandler: ((details: { url: string }) => { action: string }) | null = null;
  /** Carries what is sent into a real page. */
  deliver: ((channel: string, ports: readonly MessagePortMain[]) => void) | null = null;

  setWindowOpenHandler(handler: (details: { url: string }) => { action: string }): void {
    this.windowOpenHandler = handler;
  }
  send(channel: string, message: unknown = null): void {
    this.postMessage(channel, message, []);
  }
  postMessage(channel: string, message: unknown, ports: readonly MessagePortMain[] = []): void {
    this.sent.push({ channel, message, ports });
    this.deliver?.(channel, ports);
  }
  /** Answers whether the page was kept from going there. */
  tryToNavigate(url: string, event = 'will-navigate', isMainFrame = true): boolean {
    let isPrevented = false;
    this.emit(event, {
      url,
      isMainFrame,
      preventDefault: () => {
        isPrevented = true;
      },
    });
    return isPrevented;
  }
}

export class BrowserWindow extends EventEmitter {
  static getAllWindows(): BrowserWindow[] {
    return [...state.windows];
  }
  readonly webContents = new WebContentsDouble();
  readonly options: Electron.BrowserWindowConstructorOptions;
  readonly done: string[] = [];
  constructor(options: Electron.BrowserWindowConstructorOptions = {}) {
    super();
    this.options = options;
    state.windows.push(this);
    app.emit('web-contents-created', {}, this.webContents);
  }
  async loadURL(url: string): Promise<void> {
    this.webContents.mainFrame.url = url;
    await state.showPage?.(this, url);
    this.emit('ready-to-show');
  }
  show(): void {
    this.done.push('show');
  }
  focus(): void {
    this.done.push('focus');
  }
  restore(): void {
    this.done.push('restore');
  }
  isMinimized(): boolean {
    return true;
  }
}

export const ipcMain = {
  handle: (channel: string, handler: Handler): void => {
    if (state.invokable.has(channel)) throw new Error(`second handler for ${channel}`);
    state.invokable.set(channel, handler);
  },
} satisfies Partly<Electron.IpcMain>;

export const protocol = {
  registerSchemesAsPrivileged: (schemes: unknown[]): void => {
    state.privilegedSchemes.push(...schemes);
  },
  handle: (scheme: string, handler: (request: { url: string; method: string }) => Promise<Response>): void => {
    state.schemes.set(scheme, handler);
  },
} satisfies Partly<Electron.Protocol>;

const keep =
  (name: string) =>
  (handler: (...args: never[]) => unknown): void => {
    state.permissionHandlers.set(name, handler);
  };
export const session = {
  defaultSession: {
    setPermissionRequestHandler: keep('request'),
    setPermissionCheckHandler: keep('check'),
    setDevicePermissionHandler: keep('device'),
    setDisplayMediaRequestHandler: keep('display'),
  } satisfies Partly<Electron.Session>,
};

export const dialog = {
  showErrorBox: (title: string, content: string): void => {
    state.errorBoxes.push({ title, content });
  },
} satisfies Partly<Electron.Dialog>;

export const shell = {
  openExternal: (url: string): Promise<void> => {
    state.openedOutside.push(url);
    return Promise.resolve();
  },
} satisfies Partly<Electron.Shell>;

export const Menu = {
  buildFromTemplate: (template: unknown[]): unknown => template,
  setApplicationMenu: (): void => {},
};

export const contextBridge = {
  exposeInMainWorld: (name: string, api: unknown): void => {
    state.exposed.set(name, api);
  },
} satisfies Partly<Electron.ContextBridge>;

class IpcRendererDouble extends EventEmitter {
  invoke(channel: string, ...args: unknown[]): Promise<unknown> {
    state.invoked.push({ channel, args });
    return Promise.resolve(true);
  }
}
export const ipcRenderer = new IpcRendererDouble() satisfies Partly<Electron.IpcRenderer>;

/** Electron's face on a worker thread's port. */
export class MessagePortMain extends EventEmitter {
  readonly raw: MessagePort;
  #isStarted = false;
  constructor(raw: MessagePort) {
    super();
    this.raw = raw;
    raw.on('close', () => this.emit('close'));
  }
  start(): void {
    if (this.#isStarted) return;
    this.#isStarted = true;
    this.raw.on('message', (data: unknown) => this.emit('message', { data, ports: [] }));
  }
  postMessage(message: unknown): void {
    this.raw.postMessage(message);
  }
  close(): void {
    this.raw.close();
  }
}

export class MessageChannelMain {
  readonly port1: MessagePortMain;
  readonly port2: MessagePortMain;
  constructor() {
    const { port1, port2 } = new MessageChannel();
    this.port1 = new MessagePortMain(port1);
    this.port2 = new MessagePortMain(port2);
  }
}

/** A worker thread in the place of the process: the same module, the same messages. */
export class UtilityProcessDouble extends EventEmitter {
  readonly pid = 1;
  readonly #worker: Worker;
  constructor(modulePath: string) {
    super();
    this.#worker = new Worker(threadFile('utilityProcessWorker'), { workerData: { modulePath } });
    this.#worker.on('message', (message: unknown) => this.emit('message', message));
    this.#worker.on('error', (error) => {
      process.stderr.write(`${error.stack ?? error.message}\n`);
    });
    this.#worker.on('exit', (code) => this.emit('exit', code));
  }
  postMessage(data: unknown, ports: readonly MessagePortMain[] = []): void {
    const raw = ports.map((port) => port.raw);
    this.#worker.postMessage({ data, ports: raw }, raw);
  }
  kill(): boolean {
    void this.#worker.terminate();
    return true;
  }
}

export const utilityProcess = {
  fork: (modulePath: string): UtilityProcessDouble => {
    const child = new UtilityProcessDouble(modulePath);
    state.children.push(child);
    return child;
  },
};
