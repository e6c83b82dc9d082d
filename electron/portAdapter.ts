/** One face for the three kinds of message port: the window's, a worker thread's, and Electron's in a Node process. */

export type PortEnd = {
  readonly post: (message: unknown) => void;
  readonly onMessage: (listener: (message: unknown) => void) => void;
  readonly onClose: (listener: () => void) => void;
  readonly close: () => void;
};

/** The window's port and a worker thread's: both are event targets. */
export type EventTargetPort = {
  readonly addEventListener: (type: string, listener: (event: { readonly data?: unknown }) => void) => void;
  readonly postMessage: (message: unknown) => void;
  readonly start: () => void;
  readonly close: () => void;
};

/** Electron's MessagePortMain: an emitter whose listener gets an event. */
export type EmitterPort = {
  readonly on: {
    (type: 'message', listener: (event: { readonly data: unknown }) => void): unknown;
    (type: 'close', listener: () => void): unknown;
  };
  readonly postMessage: (message: unknown) => void;
  readonly start: () => void;
  readonly close: () => void;
};

export function adaptPort(port: EventTargetPort | EmitterPort): PortEnd {
  // A worker thread's port is both; as an emitter it would hand over the bare value.
  const onMessage = (listener: (message: unknown) => void): void => {
    if ('addEventListener' in port) port.addEventListener('message', (event) => listener(event.data));
    else port.on('message', (event) => listener(event.data));
    port.start();
  };
  const onClose = (listener: () => void): void => {
    if ('addEventListener' in port) port.addEventListener('close', () => listener());
    else port.on('close', () => listener());
  };
  return { post: (message) => port.postMessage(message), onMessage, onClose, close: () => port.close() };
}
