/** Reaches the core over the browser host's loopback HTTP. Changes come as lines of a stream, which fetch can open with the token. */
import type { AnyReply } from '../../electron/contract/operation.ts';
import {
  everyTopic,
  type GetFileReply,
  httpHeaders,
  httpPaths,
  type PutFileReply,
} from '../../electron/contract/wire.ts';
import { createListeners } from './listeners.ts';
import { type ConnectionState, offlineFile, offlineReply, type RawTransport } from './rawTransport.ts';

export type HttpTransportOptions = {
  readonly origin: string;
  readonly token: string | null;
  readonly clientId: string;
};

export type HttpTransport = RawTransport & {
  /**
   * Opens or drops the stream of changes. A browser allows six connections to one address: a hidden tab must not hold one.
   */
  readonly listen: (isListening: boolean) => void;
};

const firstRetryMs = 500;
const slowestRetryMs = 5_000;

export function createHttpTransport(options: HttpTransportOptions): HttpTransport {
  const changed = createListeners<readonly string[]>();
  const connected = createListeners<ConnectionState>();
  let state: ConnectionState = options.token === null ? 'locked-out' : 'connecting';
  let stream: AbortController | null = null;
  let hasListened = false;

  const enter = (next: ConnectionState): void => {
    if (state === next) return;
    state = next;
    connected.tell(next);
  };
  const headers = { authorization: `Bearer ${options.token ?? ''}`, [httpHeaders.client]: options.clientId };
  /** Null when nobody answered or the token is refused. */
  const request = async (path: string, init: RequestInit): Promise<Response | null> => {
    if (options.token === null) return null;
    try {
      const response = await fetch(`${options.origin}${path}`, { ...init, cache: 'no-store' });
      if (response.status === 401) {
        enter('locked-out');
        return null;
      }
      return response;
    } catch {
      if (state !== 'locked-out' && init.signal?.aborted !== true) enter('offline');
      return null;
    }
  };

  const readStream = async (signal: AbortSignal): Promise<void> => {
    const response = await request(httpPaths.events, { headers, signal });
    if (response === null || !response.ok || response.body === null) return;
    enter('online');
    if (hasListened) changed.tell([everyTopic]);
    hasListened = true;
    let rest = '';
    const decoder = new TextDecoder();
    try {
      // Not `for await`: not every browser can iterate a stream.
      const reader = response.body.getReader();
      for (let read = await reader.read(); !read.done; read = await reader.read()) {
        const lines = (rest + decoder.decode(read.value, { stream: true })).split('\n');
        rest = lines.pop() ?? '';
        for (const line of lines) {
          const topics = parseTopics(line);
          if (topics !== null) changed.tell(topics);
        }
      }
    } catch {
      // Cut off: the loop tries again.
    }
    if (!signal.aborted) enter('offline');
  };
  const keepListening = async (signal: AbortSignal): Promise<void> => {
    let waitMs = firstRetryMs;
    while (!signal.aborted && state !== 'locked-out') {
      const startedAt = performance.now();
      await readStream(signal);
      waitMs = performance.now() - startedAt > slowestRetryMs ? firstRetryMs : Math.min(2 * waitMs, slowestRetryMs);
      await pause(waitMs, signal);
    }
  };

  return {
    call: async (name, input) => {
      const response = await request(`${httpPaths.rpc}${encodeURIComponent(name)}`, {
        method: 'POST',
        headers: { ...headers, 'content-type': 'application/json' },
        // JSON has no `undefined`: an operation without input gets null and says what it wants.
        body: JSON.stringify(input ?? null),
      });
      const reply = response === null ? null : await parseReply(response);
      return reply === null ? offlineReply : (reply as AnyReply);
    },
    putFile: async (file) => {
      const response = await request(httpPaths.files, {
        method: 'POST',
        headers: {
          ...headers,
          'content-type': 'application/octet-stream',
          [httpHeaders.fileName]: encodeURIComponent(file.fileName),
          [httpHeaders.mediaType]: encodeURIComponent(file.mediaType),
          ...(file.takenAt === null ? {} : { [httpHeaders.takenAt]: encodeURIComponent(file.takenAt) }),
        },
        body: new Uint8Array(file.bytes),
      });
      const reply = response === null ? null : await parseReply(response);
      if (reply === null) return offlineFile;
      return 'error' in reply ? { ok: false, code: 'internal' } : (reply as PutFileReply);
    },
    getFile: async (attachmentId): Promise<GetFileReply> => {
      const response = await request(`${httpPaths.files}/${encodeURIComponent(attachmentId)}`, { headers });
      if (response === null) return offlineFile;
      if (!response.ok) return { ok: false, code: response.status === 404 ? 'not-found' : 'internal' };
      try {
        const bytes = new Uint8Array(await response.arrayBuffer());
        const mediaType = decodeURIComponent(response.headers.get(httpHeaders.mediaType) ?? '');
        const fileName = decodeURIComponent(response.headers.get(httpHeaders.fileName) ?? '');
        return { ok: true, file: { bytes, mediaType, fileName } };
      } catch {
        return offlineFile;
      }
    },
    onChanged: changed.add,
    connection: () => state,
    onConnection: connected.add,
    listen: (isListening) => {
      if (isListening === (stream !== null)) return;
      stream?.abort();
      stream = isListening ? new AbortController() : null;
      if (stream !== null) void keepListening(stream.signal);
    },
  };
}

/** Null when what answered is not a reply of this host. */
async function parseReply(response: Response): Promise<{ readonly ok: boolean } | null> {
  try {
    const parsed: unknown = await response.json();
    const isReply = typeof parsed === 'object' && parsed !== null && 'ok' in parsed && typeof parsed.ok === 'boolean';
    return isReply ? (parsed as { readonly ok: boolean }) : null;
  } catch {
    return null;
  }
}

function parseTopics(line: string): readonly string[] | null {
  if (line === '') return null;
  const parsed: unknown = JSON.parse(line);
  if (typeof parsed !== 'object' || parsed === null || !('topics' in parsed) || !Array.isArray(parsed.topics))
    return null;
  return parsed.topics.filter((topic) => typeof topic === 'string');
}

function pause(ms: number, signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    const timer = setTimeout(resolve, ms);
    signal.addEventListener('abort', () => {
      clearTimeout(timer);
      resolve();
    });
  });
}
