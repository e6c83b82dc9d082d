/** Serves the core over one message port, for one client. Whatever arrives, it answers a value: nothing that comes in can throw out. */
import { badInput } from './badInputReply.ts';
import type { AnyReply } from './contract/operation.ts';
import {
  type FileFound,
  type FileToPut,
  fileLimitBytes,
  type GetFileReply,
  inputLimitBytes,
  type PortMessage,
  type PortRequest,
  type PutFileReply,
} from './contract/wire.ts';
import type { ClientId, Core } from './core.ts';
import type { FaultLog } from './faultLog.ts';
import { isWithinInputLimit } from './inputSize.ts';
import type { PortEnd } from './portAdapter.ts';

/** Answers how to stop serving. */
export function servePort(core: Core, port: PortEnd, clientId: ClientId, logFault: FaultLog): () => void {
  const post = (message: PortMessage): void => {
    try {
      port.post(message);
    } catch (error) {
      // The reply holds something that cannot cross: whoever waits must still hear.
      const ref = logFault(error);
      if (message.kind === 'reply') port.post({ ...message, reply: { ok: false, ...internal(ref) } });
    }
  };
  const stopEvents = core.onChanged((topics) => post({ kind: 'changed', topics: [...topics] }));
  port.onMessage((message) => {
    const requestId = requestIdOf(message);
    if (requestId === null) return;
    const request = parseRequest(message, requestId);
    const answer = request === null ? badInput('not a request of this app') : answerRequest(core, request, clientId);
    Promise.resolve(answer)
      .catch((error: unknown): PortReply => ({ ok: false, ...internal(logFault(error)) }))
      .then((reply) => post({ kind: 'reply', requestId, reply }))
      .catch(logFault);
  });
  port.onClose(stopEvents);
  return () => {
    stopEvents();
    port.close();
  };
}

type PortReply = AnyReply | PutFileReply | GetFileReply;

async function answerRequest(core: Core, request: PortRequest, clientId: ClientId): Promise<PortReply> {
  switch (request.kind) {
    case 'call':
      if (!isWithinInputLimit(request.input, inputLimitBytes)) return badInput('too large');
      return core.call(request.name, request.input, clientId);
    case 'put-file':
      if (request.file.bytes.byteLength > fileLimitBytes) return { ok: false, code: 'too-large' };
      return core.putFile(request.file, clientId);
    case 'get-file': {
      const file = await core.getFile(request.attachmentId, clientId);
      return file === null ? { ok: false, code: 'not-found' } : { ok: true, file: withOwnBytes(file) };
    }
  }
}

/** A view into a larger buffer would drag the whole buffer through the port. */
function withOwnBytes(file: FileFound): FileFound {
  return { mediaType: file.mediaType, fileName: file.fileName, bytes: new Uint8Array(file.bytes) };
}

function requestIdOf(message: unknown): number | null {
  if (typeof message !== 'object' || message === null || !('requestId' in message)) return null;
  return typeof message.requestId === 'number' && Number.isSafeInteger(message.requestId) ? message.requestId : null;
}

function parseRequest(message: unknown, requestId: number): PortRequest | null {
  if (typeof message !== 'object' || message === null || !('kind' in message)) return null;
  if (message.kind === 'call' && 'name' in message && typeof message.name === 'string') {
    return { kind: 'call', requestId, name: message.name, input: 'input' in message ? message.input : undefined };
  }
  if (message.kind === 'put-file' && 'file' in message && isFileToPut(message.file)) {
    return { kind: 'put-file', requestId, file: message.file };
  }
  if (message.kind === 'get-file' && 'attachmentId' in message && typeof message.attachmentId === 'string') {
    return { kind: 'get-file', requestId, attachmentId: message.attachmentId };
  }
  return null;
}

function isFileToPut(file: unknown): file is FileToPut {
  return (
    typeof file === 'object' &&
    file !== null &&
    'bytes' in file &&
    file.bytes instanceof Uint8Array &&
    'mediaType' in file &&
    typeof file.mediaType === 'string' &&
    'fileName' in file &&
    typeof file.fileName === 'string' &&
    'takenAt' in file &&
    (file.takenAt === null || typeof file.takenAt === 'string')
  );
}

/** A failed call reads `error`, a failed file reads `code`: the bug answers both. */
function internal(ref: string): {
  readonly code: 'internal';
  readonly error: { code: 'internal'; data: { ref: string } };
} {
  return { code: 'internal', error: { code: 'internal', data: { ref } } };
}
