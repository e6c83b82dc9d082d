/** Stands in for what the package `electron` gives a preload, inside a page that a test drives. */
import { fromTagged, toTagged } from '../../support/taggedJson.ts';

type Listener = (event: { readonly ports: readonly MessagePort[] }) => void;

/** What the test put on the window. */
type TestSide = {
  readonly testInvoke: (channel: string, args: string) => Promise<string>;
  readonly testPortPost: (portId: number, message: string) => Promise<void>;
};
const testSide = window as object as TestSide;

const listeners = new Map<string, Listener[]>();
const ports = new Map<number, MessagePort>();

export const contextBridge = {
  /** As the real one: neither the name nor what stands behind it can be changed by the page. */
  exposeInMainWorld: (name: string, api: Readonly<Record<string, unknown>>): void => {
    Object.defineProperty(window, name, { value: Object.freeze({ ...api }), writable: false, configurable: false });
  },
};

export const ipcRenderer = {
  invoke: async (channel: string, ...args: unknown[]): Promise<unknown> =>
    fromTagged(await testSide.testInvoke(channel, toTagged(args))),
  on: (channel: string, listener: Listener): void => {
    listeners.set(channel, [...(listeners.get(channel) ?? []), listener]);
  },
};

/** For the test: a message of the main process, with a port or without. */
function deliver(channel: string, portId: number | null): void {
  const handed: MessagePort[] = [];
  if (portId !== null) {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = (event) => void testSide.testPortPost(portId, toTagged(event.data));
    ports.set(portId, port1);
    handed.push(port2);
  }
  for (const listener of listeners.get(channel) ?? []) listener({ ports: handed });
}

function deliverToPort(portId: number, message: string): void {
  ports.get(portId)?.postMessage(fromTagged(message));
}

Object.assign(window, { testDeliver: deliver, testDeliverToPort: deliverToPort });
