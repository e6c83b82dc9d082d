/**
 * Who may talk to the browser host: only a page that this host served, opened by whoever holds the token of this start.
 * The exact Host closes DNS rebinding, the Origin other sites, the token other programs of other users.
 */
import { timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import { httpHeaders } from './contract/wire.ts';

export type Refusal = { readonly status: 400 | 401 | 403 | 421; readonly why: string };

export function checkHostAndOrigin(request: IncomingMessage, port: number): Refusal | null {
  const hosts = request.rawHeaders
    .filter((_, index) => index % 2 === 0)
    .filter((name) => name.toLowerCase() === 'host');
  const host = request.headers.host;
  if (hosts.length !== 1 || (host !== `127.0.0.1:${port}` && host !== `localhost:${port}`)) {
    return { status: 421, why: 'unknown host' };
  }
  const origin = request.headers.origin;
  if (origin !== undefined && origin !== `http://${host}`) return { status: 403, why: 'foreign origin' };
  return null;
}

export function checkToken(request: IncomingMessage, token: string): Refusal | null {
  const given = Buffer.from(request.headers.authorization ?? '');
  const wanted = Buffer.from(`Bearer ${token}`);
  const isRight = given.length === wanted.length && timingSafeEqual(given, wanted);
  return isRight ? null : { status: 401, why: 'no valid token' };
}

export function readClientId(request: IncomingMessage): string | null {
  const clientId = request.headers[httpHeaders.client];
  return typeof clientId === 'string' && /^[A-Za-z0-9-]{16,64}$/.test(clientId) ? clientId : null;
}
