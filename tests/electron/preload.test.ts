import { beforeAll, describe, expect, it, vi } from 'vitest';
import {
  bridgeName,
  connectChannel,
  coreLostMessage,
  type DesktopBridge,
  portMessage,
} from '../../electron/contract/wire.ts';
import { ipcRenderer, state } from '../support/electronDouble.ts';

const posted: unknown[][] = [];

beforeAll(async () => {
  vi.stubGlobal('window', {
    location: { origin: 'app://lightoff' },
    postMessage: (...args: unknown[]) => posted.push(args),
  });
  await import('../../electron/preload.ts');
});

describe('preload', () => {
  it('gives the page one frozen function and nothing else', () => {
    expect([...state.exposed.keys()]).toEqual([bridgeName]);
    const bridge = state.exposed.get(bridgeName) as DesktopBridge;
    expect(Object.isFrozen(bridge)).toBe(true);
    expect(Object.entries(bridge).map(([name, value]) => [name, typeof value])).toEqual([['connect', 'function']]);
  });

  it('asks for the port without passing anything of the page’s on', async () => {
    const bridge = state.exposed.get(bridgeName) as { connect: (...args: unknown[]) => Promise<boolean> };
    expect(await bridge.connect('anything', { at: 'all' })).toBe(true);
    expect(state.invoked).toEqual([{ channel: connectChannel, args: [] }]);
  });

  it('passes ports and the loss of the core to its own page only, and no event object', () => {
    const ports = ['a port'];
    ipcRenderer.emit(portMessage, { ports, sender: 'secret' });
    ipcRenderer.emit(coreLostMessage, { sender: 'secret' });
    expect(posted).toEqual([
      [portMessage, 'app://lightoff', ports],
      [coreLostMessage, 'app://lightoff'],
    ]);
  });
});
