/** Reads a request's body up to a limit, and never holds more than that in memory. */
import type { IncomingMessage } from 'node:http';

export type Body =
  | { readonly ok: true; readonly bytes: Buffer }
  | { readonly ok: false; readonly code: 'too-large' | 'cut-off' };

export function readBody(request: IncomingMessage, limitBytes: number): Promise<Body> {
  const announced = Number(request.headers['content-length'] ?? 0);
  if (announced > limitBytes) return Promise.resolve({ ok: false, code: 'too-large' });
  return new Promise((resolve) => {
    const chunks: Buffer[] = [];
    let bytes = 0;
    const finish = (body: Body): void => {
      request.off('data', take);
      resolve(body);
    };
    const take = (chunk: Buffer): void => {
      bytes += chunk.length;
      if (bytes > limitBytes) finish({ ok: false, code: 'too-large' });
      else chunks.push(chunk);
    };
    request.on('data', take);
    request.on('end', () => finish({ ok: true, bytes: Buffer.concat(chunks) }));
    request.on('error', () => finish({ ok: false, code: 'cut-off' }));
    request.on('close', () => finish({ ok: false, code: 'cut-off' }));
  });
}
