/**
 * All that the page gets from the desktop shell: one function that asks for the port to the core. Ports and the news that
 * the core is gone arrive as messages of the window to itself, the only way in which a port can pass the isolation.
 */
import { contextBridge, ipcRenderer } from 'electron';
import { bridgeName, connectChannel, coreLostMessage, type DesktopBridge, portMessage } from './contract/wire.ts';

/** The part of the page's window used here: the shell is compiled without the browser's types. */
declare const window: {
  readonly location: { readonly origin: string };
  readonly postMessage: (message: string, targetOrigin: string, ports?: readonly unknown[]) => void;
};

const bridge: DesktopBridge = Object.freeze({
  connect: async () => (await ipcRenderer.invoke(connectChannel)) === true,
});

contextBridge.exposeInMainWorld(bridgeName, bridge);

ipcRenderer.on(portMessage, (event) => window.postMessage(portMessage, window.location.origin, event.ports));
ipcRenderer.on(coreLostMessage, () => window.postMessage(coreLostMessage, window.location.origin));
