/** Picks the transport of the host that this page runs in: the desktop shell's port when its bridge is there, else loopback HTTP. */
import { bridgeName, coreLostMessage, type DesktopBridge, portMessage } from '../../electron/contract/wire.ts';
import { createHttpTransport } from './httpTransport.ts';
import { createPortTransport } from './portTransport.ts';
import { readTabIdentity } from './tabIdentity.ts';
import type { Transport } from './transport.ts';

/** Call it once, before the first render. */
export function connect(): Transport {
  const bridge: DesktopBridge | undefined = (window as { [bridgeName]?: DesktopBridge })[bridgeName];
  return bridge === undefined ? connectOverHttp() : connectOverPort(bridge);
}

function connectOverPort(bridge: DesktopBridge): Transport {
  const transport = createPortTransport();
  window.addEventListener('message', (event) => {
    if (event.source !== window || event.origin !== window.location.origin) return;
    const [port] = event.ports;
    if (event.data === portMessage && port !== undefined) transport.attach(port);
    if (event.data === coreLostMessage) transport.detach();
  });
  void bridge.connect();
  return transport;
}

function connectOverHttp(): Transport {
  const transport = createHttpTransport({ origin: window.location.origin, ...readTabIdentity() });
  const followVisibility = (): void => transport.listen(document.visibilityState === 'visible');
  document.addEventListener('visibilitychange', followVisibility);
  followVisibility();
  return transport;
}
