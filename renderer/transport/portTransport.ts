/** Reaches the core over the desktop shell's message port, and over a new one after the core was restarted. */
import type { AnyReply } from '../../electron/contract/operation.ts';
import {
  everyTopic,
  type FileToPut,
  type GetFileReply,
  type PortMessage,
  type PortRequest,
  type PutFileReply,
} from '../../electron/contract/wire.ts';
import { createListeners } from './listeners.ts';
import { type ConnectionState, offlineFile, offlineReply, type RawTransport } from './rawTransport.ts';

/** The part of a MessagePort used here, so that tests can hand over a worker thread's. */
export type WindowPort = {
  readonly addEventListener: (type: 'message', listener: (event: object) => void) => void;
  readonly postMessage: (message: unknown) => void;
  readonly start: () => void;
  readonly close: () => void;
};

export type PortTransport = RawTransport & {
  /** A port arrived: the first, or the one after a loss. */
  readonly attach: (port: WindowPort) => void;
  /** The core is gone: whoever waits hears `offline`. */
  readonly detach: () => void;
};

type Answer = AnyReply | PutFileReply | GetFileReply;
type Waiting = { readonly settle: (answer: Answer) => void; readonly offline: Answer };
type WithoutId<T> = T extends unknown ? Omit<T, 'requestId'> : never;
type Unsent = WithoutId<PortRequest>;

/** How long a question asked before the first port may wait for it. */
const firstPortWaitMs = 15_000;

export function createPortTransport(): PortTransport {
  const changed = createListeners<readonly string[]>();
  const connected = createListeners<ConnectionState>();
  const waiting = new Map<number, Waiting>();
  const beforeFirstPort: (() => void)[] = [];
  let state: ConnectionState = 'connecting';
  let current: WindowPort | null = null;
  let nextRequestId = 1;

  const enter = (next: ConnectionState): void => {
    if (state === next) return;
    state = next;
    connected.tell(next);
  };
  const dropAll = (): void => {
    for (const { settle, offline } of waiting.values()) settle(offline);
    waiting.clear();
  };
  const flush = (): void => {
    for (const send of beforeFirstPort.splice(0)) send();
  };
  const giveUp = setTimeout(() => {
    if (state !== 'connecting') return;
    enter('offline');
    flush();
  }, firstPortWaitMs);

  const ask = (request: Unsent, offline: Answer): Promise<Answer> =>
    new Promise((settle) => {
      const send = (): void => {
        if (current === null) {
          settle(offline);
          return;
        }
        const requestId = nextRequestId;
        nextRequestId += 1;
        waiting.set(requestId, { settle, offline });
        try {
          current.postMessage({ ...request, requestId });
        } catch {
          // Holds something that cannot cross a port: a bug of the caller, which the caller hears as such.
          waiting.delete(requestId);
          settle({ ok: false, code: 'internal', ...uncloneable });
        }
      };
      if (state === 'connecting') beforeFirstPort.push(send);
      else send();
    });

  return {
    call: async (name, input) => (await ask({ kind: 'call', name, input }, offlineReply)) as AnyReply,
    putFile: async (file: FileToPut) => {
      const bytes = file.bytes.byteLength === file.bytes.buffer.byteLength ? file.bytes : new Uint8Array(file.bytes);
      return (await ask({ kind: 'put-file', file: { ...file, bytes } }, offlineFile)) as PutFileReply;
    },
    getFile: async (attachmentId) => (await ask({ kind: 'get-file', attachmentId }, offlineFile)) as GetFileReply,
    onChanged: changed.add,
    connection: () => state,
    onConnection: connected.add,
    attach: (port) => {
      const isFirst = state === 'connecting';
      clearTimeout(giveUp);
      current?.close();
      dropAll();
      current = port;
      port.addEventListener('message', (event) => {
        if (current !== port || !('data' in event)) return;
        // Only the core holds the other end.
        const message = event.data as PortMessage;
        if (message.kind === 'changed') {
          changed.tell(message.topics);
          return;
        }
        const asked = waiting.get(message.requestId);
        waiting.delete(message.requestId);
        asked?.settle(message.reply);
      });
      port.start();
      enter('online');
      flush();
      if (!isFirst) changed.tell([everyTopic]);
    },
    detach: () => {
      clearTimeout(giveUp);
      current?.close();
      current = null;
      dropAll();
      enter('offline');
      flush();
    },
  };
}

const uncloneable = { error: { code: 'internal', data: { ref: 'not-cloneable' } } } as const;
