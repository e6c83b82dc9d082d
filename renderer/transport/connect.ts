/** Picks the transport of the host that this page runs in: the desktop shell's port when its bridge is there, else loopback HTTP. */
import { bridgeName, coreLostMessage, type DesktopBridge, portMessage } from '../../electron/contract/wire.ts';
import { createCall } from './call.ts';
import { createHttpTransport } from './httpTransport.ts';
import { createPortTransport } from './portTransport.ts';
import type { RawTransport } from './rawTransport.ts';
import type { Transport } from './Transport.ts';
import { followNewToken, readTabIdentity } from './tabIdentity.ts';

/** Call it once, before the first render. */
export function connect(): Transport {
  const bridge: DesktopBridge | undefined = (window as { [bridgeName]?: DesktopBridge })[bridgeName];
  const raw = bridge === undefined ? connectOverHttp() : connectOverPort(bridge);
  return { ...raw, call: createCall(raw) };
}

function connectOverPort(bridge: DesktopBridge): RawTransport {
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

function connectOverHttp(): RawTransport {
  const transport = createHttpTransport({ origin: window.location.origin, ...readTabIdentity() });
  followNewToken();
  const followVisibility = (): void => transport.listen(document.visibilityState === 'visible');
  document.addEventListener('visibilitychange', followVisibility);
  followVisibility();
  return transport;
}
