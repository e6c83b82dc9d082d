/** Puts the desktop shell together: its own page, one window, the core in its process, and the guards around them. */
import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { app, BrowserWindow, dialog, ipcMain, protocol, session, shell, type WebContents } from 'electron';
import { setAppMenu } from './appMenu.ts';
import { answerAppRequest, appSchemePrivileges } from './appProtocol.ts';
import { connectChannel } from './contract/wire.ts';
import type { CoreLocation } from './coreCommands.ts';
import { type CoreSupervisor, superviseCore } from './coreSupervisor.ts';
import { type FaultLog, openFaultLog } from './faultLog.ts';
import { grantPermissions } from './grantPermissions.ts';
import { guardContents } from './guardContents.ts';
import { handleFromWindow } from './handleFromWindow.ts';
import { appScheme } from './navigationPolicy.ts';
import { createWindow } from './window.ts';

export type ShellOptions = {
  readonly location: CoreLocation;
  readonly rendererFolder: string;
  /** Holds preload.cjs and coreProcess.js. */
  readonly shellFolder: string;
};

export function startShell(options: ShellOptions): void {
  if (!app.requestSingleInstanceLock()) {
    app.quit();
    return;
  }
  const logFault = openFaultLog(options.location.dataFolder, options.location.appRoot);
  protocol.registerSchemesAsPrivileged([appSchemePrivileges]);
  app.enableSandbox();
  app.on('web-contents-created', (_event, contents) =>
    guardContents(contents, (address) => void shell.openExternal(address).catch(logFault)),
  );
  app.on('second-instance', () => {
    const [window] = BrowserWindow.getAllWindows();
    if (window?.isMinimized()) window.restore();
    window?.focus();
  });
  app.on('window-all-closed', () => app.quit());
  app
    .whenReady()
    .then(() => openApp(options, logFault))
    .catch((error: unknown) => {
      logFault(error);
      app.exit(1);
    });
}

function openApp(options: ShellOptions, logFault: FaultLog): void {
  setAppMenu(process.platform);
  grantPermissions(session.defaultSession);
  protocol.handle(appScheme, (request) => answerAppRequest(request, options.rendererFolder));
  const supervisor = superviseCore({
    coreProcessPath: join(options.shellFolder, 'coreProcess.js'),
    location: options.location,
    onCannotOpen: (why) => {
      dialog.showErrorBox('Lightoff cannot open its data', `${why}\n\n${options.location.dataFolder}`);
      app.exit(1);
    },
  });
  closeBeforeQuitting(supervisor, logFault);
  const clientIds = new WeakMap<WebContents, string>();
  handleFromWindow(
    ipcMain,
    {
      channel: connectChannel,
      parse: (args) => (args.length === 0 ? [] : null),
      handle: (_nothing, sender) => {
        // Kept over a reload, so that whoever is signed in stays so.
        const clientId = clientIds.get(sender) ?? randomUUID();
        clientIds.set(sender, clientId);
        supervisor.connect(sender, clientId);
        return true;
      },
    },
    logFault,
  );
  createWindow(join(options.shellFolder, 'preload.cjs'), !app.isPackaged);
}

function closeBeforeQuitting(supervisor: CoreSupervisor, logFault: FaultLog): void {
  let isClosed = false;
  app.on('will-quit', (event) => {
    if (isClosed) return;
    event.preventDefault();
    supervisor
      .close()
      .catch(logFault)
      .finally(() => {
        isClosed = true;
        app.quit();
      });
  });
}
