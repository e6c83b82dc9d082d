/**
 * The app in a browser on this machine: the same core as the desktop shell, over HTTP on loopback. No rule of the work
 * lives here, only the transport and its guards.
 */

import { randomBytes } from 'node:crypto';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { badInput } from './badInputReply.ts';
import { pageHeaders } from './contentSecurityPolicy.ts';
import type { AnyReply } from './contract/operation.ts';
import { fileLimitBytes, httpHeaders, httpPaths, inputLimitBytes, type PutFileReply } from './contract/wire.ts';
import type { ClientId, Core } from './core.ts';
import type { FaultLog } from './faultLog.ts';
import { readPageFile } from './pageFile.ts';
import { type Body, readBody } from './readBody.ts';
import { checkHostAndOrigin, checkToken, readClientId } from './requestGuards.ts';

export type BrowserHostOptions = {
  readonly core: Core;
  readonly rendererFolder: string;
  /** 0 takes any free one. */
  readonly port: number;
  readonly logFault: FaultLog;
};

export type BrowserHost = {
  readonly origin: string;
  readonly port: number;
  readonly token: string;
  /** Where to open the app; the token stands in the fragment, which a browser never sends. */
  readonly address: string;
  /** Stops serving; the core stays open. */
  readonly close: () => Promise<void>;
};

const loopback = '127.0.0.1';
const heartbeatMs = 15_000;
/** A tab that stopped reading comes back by itself and asks for everything again. */
const unreadLimitBytes = 256 * 1024;

/** Rejects when the port is taken. */
export async function startBrowserHost(options: BrowserHostOptions): Promise<BrowserHost> {
  const token = randomBytes(32).toString('base64url');
  const eventStreams = new Set<ServerResponse>();
  let port = options.port;
  const server = createServer({ headersTimeout: 10_000, requestTimeout: 120_000 }, (request, response) => {
    const context = { ...options, port, token, eventStreams };
    answer(request, response, context).catch((error: unknown) => {
      const ref = options.logFault(error);
      if (response.headersSent) response.destroy();
      else sendReply(response, 500, { ok: false, error: { code: 'internal', data: { ref } } });
    });
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen({ host: loopback, port, exclusive: true }, () => {
      server.off('error', reject);
      resolve();
    });
  });
  port = portOf(server.address());
  const tellAll = (line: string): void => {
    for (const stream of eventStreams) {
      if (stream.writableLength > unreadLimitBytes) stream.destroy();
      else stream.write(`${line}\n`);
    }
  };
  const stopEvents = options.core.onChanged((topics) => tellAll(JSON.stringify({ topics })));
  // An idle stream that nobody writes to would not notice that its reader is gone.
  const heartbeat = setInterval(() => tellAll(''), heartbeatMs);
  const origin = `http://${loopback}:${port}`;
  return {
    origin,
    port,
    token,
    address: `${origin}/#token=${token}`,
    close: () => {
      stopEvents();
      clearInterval(heartbeat);
      for (const stream of eventStreams) stream.end();
      const closed = new Promise<void>((resolve) => server.close(() => resolve()));
      server.closeAllConnections();
      return closed;
    },
  };
}

type Context = BrowserHostOptions & { readonly token: string; readonly eventStreams: Set<ServerResponse> };

async function answer(request: IncomingMessage, response: ServerResponse, context: Context): Promise<void> {
  for (const [name, value] of Object.entries(pageHeaders)) response.setHeader(name, value);
  const path = (request.url ?? '').split(/[?#]/, 1)[0] ?? '';
  const isApi = path.startsWith(httpPaths.rpc) || path.startsWith(httpPaths.files) || path === httpPaths.events;
  const refusal = checkHostAndOrigin(request, context.port) ?? (isApi ? checkToken(request, context.token) : null);
  if (refusal !== null) return refuse(request, response, refusal.status, refusal.why);
  if (!isApi) return answerPage(request, response, path, context);
  if (path === httpPaths.events && request.method === 'GET') return openEventStream(response, context);

  const clientId = readClientId(request);
  if (clientId === null) return refuse(request, response, 400, 'no client id');
  if (path.startsWith(httpPaths.rpc) && request.method === 'POST') {
    return answerCall(request, response, path.slice(httpPaths.rpc.length), clientId, context);
  }
  if (path === httpPaths.files && request.method === 'POST') return takeFile(request, response, clientId, context);
  if (path.startsWith(`${httpPaths.files}/`) && request.method === 'GET') {
    return giveFile(request, response, path.slice(httpPaths.files.length + 1), clientId, context);
  }
  return refuse(request, response, 405, 'not served');
}

async function answerPage(
  request: IncomingMessage,
  response: ServerResponse,
  path: string,
  context: Context,
): Promise<void> {
  if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(request, response, 405, 'not served');
  const file = await readPageFile(context.rendererFolder, path);
  if (file === null) return refuse(request, response, 404, 'no such file');
  response.writeHead(200, { 'content-type': file.mediaType, 'content-length': file.bytes.byteLength });
  response.end(request.method === 'HEAD' ? undefined : file.bytes);
}

function openEventStream(response: ServerResponse, context: Context): void {
  response.writeHead(200, { 'content-type': 'application/x-ndjson' });
  response.write('\n');
  context.eventStreams.add(response);
  response.on('close', () => context.eventStreams.delete(response));
}

async function answerCall(
  request: IncomingMessage,
  response: ServerResponse,
  rawName: string,
  clientId: ClientId,
  context: Context,
): Promise<void> {
  if (mediaTypeOf(request) !== 'application/json') return refuse(request, response, 415, 'JSON only');
  const body = await readBody(request, inputLimitBytes);
  if (!body.ok) return refuseBody(request, response, body, badInput('too large'));
  const input = parseJson(body.bytes);
  if (!input.ok) return sendReply(response, 400, badInput('not JSON'));
  const name = parseName(rawName);
  sendReply(response, 200, await context.core.call(name, input.value, clientId));
}

async function takeFile(
  request: IncomingMessage,
  response: ServerResponse,
  clientId: ClientId,
  context: Context,
): Promise<void> {
  const fileName = decodedHeader(request, httpHeaders.fileName);
  const mediaType = decodedHeader(request, httpHeaders.mediaType);
  if (!fileName || !mediaType) return refuse(request, response, 400, 'no file name or media type');
  const body = await readBody(request, fileLimitBytes);
  if (!body.ok) return refuseBody(request, response, body, { ok: false, code: 'too-large' });
  const takenAt = decodedHeader(request, httpHeaders.takenAt);
  sendReply(response, 200, await context.core.putFile({ bytes: body.bytes, mediaType, fileName, takenAt }, clientId));
}

async function giveFile(
  request: IncomingMessage,
  response: ServerResponse,
  attachmentId: string,
  clientId: ClientId,
  context: Context,
): Promise<void> {
  const file = await context.core.getFile(attachmentId, clientId);
  if (file === null) return refuse(request, response, 404, 'no such file');
  // Never the file's own type: what a customer sent must not open as a page of this origin.
  response.writeHead(200, {
    'content-type': 'application/octet-stream',
    'content-disposition': 'attachment',
    'content-length': file.bytes.byteLength,
    [httpHeaders.mediaType]: encodeURIComponent(file.mediaType),
    [httpHeaders.fileName]: encodeURIComponent(file.fileName),
  });
  response.end(file.bytes);
}

function refuseBody(
  request: IncomingMessage,
  response: ServerResponse,
  body: Body & { readonly ok: false },
  tooLarge: AnyReply | PutFileReply,
): void {
  if (body.code === 'cut-off') {
    response.destroy();
    return;
  }
  dropBody(request, response);
  sendReply(response, 413, tooLarge);
}

function refuse(request: IncomingMessage, response: ServerResponse, status: number, why: string): void {
  dropBody(request, response);
  response.writeHead(status, { 'content-type': 'text/plain; charset=utf-8' });
  response.end(`${why}\n`);
}

/** Reads on for a moment without keeping anything: a connection cut while the other side still writes loses the answer. */
function dropBody(request: IncomingMessage, response: ServerResponse): void {
  if (request.complete) return;
  response.setHeader('connection', 'close');
  request.resume();
  const cut = setTimeout(() => request.destroy(), 3_000);
  cut.unref();
  request.on('close', () => clearTimeout(cut));
}

function sendReply(response: ServerResponse, status: number, reply: AnyReply | PutFileReply): void {
  const body = Buffer.from(JSON.stringify(reply));
  response.writeHead(status, { 'content-type': 'application/json; charset=utf-8', 'content-length': body.length });
  response.end(body);
}

function parseJson(bytes: Buffer): { readonly ok: true; readonly value: unknown } | { readonly ok: false } {
  try {
    return { ok: true, value: JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes)) };
  } catch {
    return { ok: false };
  }
}

/** A name that can't be decoded is nobody's operation: the core says so. */
function parseName(rawName: string): string {
  try {
    return decodeURIComponent(rawName);
  } catch {
    return rawName;
  }
}

function decodedHeader(request: IncomingMessage, name: string): string | null {
  const value = request.headers[name];
  if (typeof value !== 'string' || value === '') return null;
  try {
    return decodeURIComponent(value);
  } catch {
    return null;
  }
}

function mediaTypeOf(request: IncomingMessage): string {
  return (request.headers['content-type'] ?? '').split(';', 1)[0]?.trim().toLowerCase() ?? '';
}

function portOf(address: ReturnType<ReturnType<typeof createServer>['address']>): number {
  if (address === null || typeof address === 'string') throw new Error('the server has no port');
  return address.port;
}
