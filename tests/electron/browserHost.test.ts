import { request as sendRequest } from 'node:http';
import { connect as connectSocket } from 'node:net';
import { networkInterfaces } from 'node:os';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type BrowserHost, startBrowserHost } from '../../electron/browserHost.ts';
import { contentSecurityPolicy } from '../../electron/contentSecurityPolicy.ts';
import { fileLimitBytes, inputLimitBytes } from '../../electron/contract/wire.ts';
import { createEchoCore, type EchoCore } from '../support/echoCore.ts';
import { hostilePaths } from '../support/hostilePaths.ts';
import { makePageFolder, secret } from '../support/pageFolder.ts';
import { openTestCore, type TestCore } from '../support/testCore.ts';

const page = makePageFolder();
const faults: unknown[] = [];
const clientId = '0d9f4a52-4d2e-4c57-9b1e-3f0a6c1d2e3f';
let core: EchoCore;
let host: BrowserHost;

beforeAll(async () => {
  core = createEchoCore();
  host = await startBrowserHost({
    core,
    rendererFolder: page.folder,
    port: 0,
    logFault: (error) => {
      faults.push(error);
      return 'ref-1';
    },
  });
});
afterAll(async () => {
  await host.close();
  page.remove();
});

type Sent = {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string | Buffer;
};
type Answer = {
  readonly status: number;
  readonly headers: Record<string, string | string[] | undefined>;
  readonly text: string;
};

/** Node's own client: fetch would tidy the path and refuse to set Host and Origin. */
function send(
  path: string,
  { method = 'GET', headers = {}, body }: Sent = {},
  to: BrowserHost = host,
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const request = sendRequest(
      { host: '127.0.0.1', port: to.port, path, method, headers, agent: false },
      (response) => {
        const chunks: Buffer[] = [];
        response.on('data', (chunk: Buffer) => chunks.push(chunk));
        response.on('end', () =>
          resolve({
            status: response.statusCode ?? 0,
            headers: response.headers,
            text: Buffer.concat(chunks).toString(),
          }),
        );
      },
    );
    request.on('error', reject);
    request.end(body);
  });
}

const allowed = (to: BrowserHost = host) => ({
  authorization: `Bearer ${to.token}`,
  'x-client': clientId,
  'content-type': 'application/json',
});
const call = (name: string, body: string | Buffer, headers: Readonly<Record<string, string>> = {}) =>
  send(`/rpc/${name}`, { method: 'POST', headers: { ...allowed(), ...headers }, body });

describe('the browser host', () => {
  it('answers an operation for the tab that asks', async () => {
    const answer = await call('test.echo', '{"visit":1}');
    expect(answer.status).toBe(200);
    expect(JSON.parse(answer.text)).toEqual({ ok: true, value: { input: { visit: 1 }, clientId } });
  });

  it('serves the page under its policy, to anybody on this machine', async () => {
    const answer = await send('/');
    expect(answer.text).toContain('<title>page</title>');
    expect(answer.headers['content-security-policy']).toBe(contentSecurityPolicy);
    expect(answer.headers['x-content-type-options']).toBe('nosniff');
    expect(answer.headers['cache-control']).toBe('no-store');
  });

  it('keeps the token out of what a browser sends', () => {
    expect(host.address).toBe(`http://127.0.0.1:${host.port}/#token=${host.token}`);
    expect(host.token.length).toBeGreaterThanOrEqual(43);
  });

  it('takes a new token at every start', async () => {
    const other = await startBrowserHost({ core, rendererFolder: page.folder, port: 0, logFault: () => '' });
    expect(other.token).not.toBe(host.token);
    await other.close();
  });

  it('listens on loopback alone', async () => {
    const outer = Object.values(networkInterfaces())
      .flat()
      .filter((address) => address !== undefined && !address.internal && address.family === 'IPv4');
    for (const address of ['::1', ...outer.map((one) => one?.address ?? '')]) {
      const isOpen = await new Promise<boolean>((resolve) => {
        const socket = connectSocket({ host: address, port: host.port, timeout: 500 });
        socket.on('connect', () => resolve(true));
        socket.on('error', () => resolve(false));
        socket.on('timeout', () => resolve(false));
        socket.on('close', () => resolve(false));
      });
      expect({ address, isOpen }).toEqual({ address, isOpen: false });
    }
  });

  it('fails to start on a port that is taken', async () => {
    await expect(
      startBrowserHost({ core, rendererFolder: page.folder, port: host.port, logFault: () => '' }),
    ).rejects.toMatchObject({ code: 'EADDRINUSE' });
  });
});

describe('its guards', () => {
  it.each([
    ['no token', { authorization: '' }],
    ['a wrong token', { authorization: `Bearer ${'A'.repeat(43)}` }],
    ['a shorter token', { authorization: 'Bearer A' }],
    ['another scheme', { authorization: 'Basic QTpC' }],
  ])('refuse %s', async (_words, headers) => {
    const before = core.calls.length;
    expect((await call('test.echo', '{}', headers)).status).toBe(401);
    expect((await send('/files/file-1', { headers: { ...allowed(), ...headers } })).status).toBe(401);
    expect((await send('/events', { headers: { ...allowed(), ...headers } })).status).toBe(401);
    expect(core.calls.length).toBe(before);
  });

  it('do not take the token from the address', async () => {
    const { authorization: _, ...rest } = allowed();
    const answer = await send(`/rpc/test.echo?token=${host.token}`, { method: 'POST', headers: rest, body: '{}' });
    expect(answer.status).toBe(401);
  });

  it.each([
    'example.com:PORT',
    'lightoff.example:PORT',
    '127.0.0.1',
    'localhost',
    '127.0.0.1:1',
    '127.0.0.1.example:PORT',
    'localhost.example:PORT',
    '0.0.0.0:PORT',
    '127.0.0.2:PORT',
    '[::1]:PORT',
    'user@127.0.0.1:PORT',
  ])('refuse the host name %s, for the page too', async (name) => {
    const headers = { ...allowed(), host: name.replace('PORT', String(host.port)) };
    expect((await send('/', { headers })).status).toBe(421);
    expect((await call('test.echo', '{}', headers)).status).toBe(421);
  });

  it.each([
    '',
    'Host: 127.0.0.1:PORT\r\nHost: example.com\r\n',
    'Host: example.com\r\nHost: 127.0.0.1:PORT\r\n',
    'Host: \r\n',
  ])('refuse the host lines %j', async (lines) => {
    const status = await sendRaw(
      `GET / HTTP/1.1\r\n${lines.replace('PORT', String(host.port))}Connection: close\r\n\r\n`,
    );
    expect(['400', '421']).toContain(status);
  });

  it('know this machine by its other name', async () => {
    const name = `localhost:${host.port}`;
    expect((await call('test.echo', '{}', { host: name, origin: `http://${name}` })).status).toBe(200);
  });

  it.each(['https://example.com', 'null', 'http://127.0.0.1', 'http://127.0.0.1.example', 'app://lightoff', 'file://'])(
    'refuse a page from %s',
    async (origin) => {
      const answer = await call('test.echo', '{}', { origin });
      expect(answer.status).toBe(403);
      expect(answer.headers['access-control-allow-origin']).toBeUndefined();
    },
  );

  it('answer no preflight', async () => {
    const answer = await send('/rpc/test.echo', {
      method: 'OPTIONS',
      headers: { origin: 'https://example.com', 'access-control-request-method': 'POST' },
    });
    expect(answer.status).toBe(403);
    expect(Object.keys(answer.headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
  });

  it.each(['', 'short', 'x'.repeat(65), 'with space in it....', '../../../../../../etc'])(
    'refuse the tab id %j',
    async (id) => {
      expect((await call('test.echo', '{}', { 'x-client': id })).status).toBe(400);
    },
  );

  it.each(['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data', ''])(
    'refuse a body of %j',
    async (type) => {
      expect((await call('test.echo', '{}', { 'content-type': type })).status).toBe(415);
    },
  );

  it.each(['PUT', 'DELETE', 'PATCH', 'GET', 'HEAD'])('refuse %s to an operation', async (method) => {
    expect((await send('/rpc/test.echo', { method, headers: allowed() })).status).toBe(405);
  });

  it.each(hostilePaths)('serve nothing from %s', async (path) => {
    const answer = await send(encodeNonLatin(path));
    expect(answer.status).toBeGreaterThanOrEqual(400);
    expect(answer.text).not.toContain(secret);
  });
});

describe('its limits', () => {
  it('refuses an operation’s input over its limit, announced or not', async () => {
    const body = Buffer.alloc(inputLimitBytes + 1, ' ');
    const before = core.calls.length;
    const announced = await call('test.echo', body);
    const chunked = await call('test.echo', body, { 'transfer-encoding': 'chunked' });
    for (const answer of [announced, chunked]) {
      expect(answer.status).toBe(413);
      expect(JSON.parse(answer.text)).toMatchObject({ ok: false, error: { code: 'bad-input' } });
    }
    expect(core.calls.length).toBe(before);
  });

  it('takes an input just within its limit', async () => {
    const text = JSON.stringify('x'.repeat(inputLimitBytes - 2));
    expect((await call('test.echo', text)).status).toBe(200);
  });

  it('refuses a file over its limit without reading it', async () => {
    const headers = {
      ...allowed(),
      'x-file-name': 'big.jpg',
      'x-media-type': 'image%2Fjpeg',
      'content-length': String(fileLimitBytes + 1),
    };
    const status = await new Promise<number>((resolve, reject) => {
      const request = sendRequest(
        { host: '127.0.0.1', port: host.port, path: '/files', method: 'POST', headers },
        (response) => {
          resolve(response.statusCode ?? 0);
          request.destroy();
        },
      );
      request.on('error', reject);
      request.write('x');
    });
    expect(status).toBe(413);
  });
});

describe('its files', () => {
  it('come back byte for byte under their own name', async () => {
    const bytes = Buffer.from(Array.from({ length: 70_000 }, (_, index) => (index * 7) % 256));
    const name = 'Żółty kocioł, 3 €.jpg';
    const put = await send('/files', {
      method: 'POST',
      headers: {
        ...allowed(),
        'content-type': 'application/octet-stream',
        'x-file-name': encodeURIComponent(name),
        'x-media-type': encodeURIComponent('image/jpeg'),
      },
      body: bytes,
    });
    const { attachmentId } = JSON.parse(put.text);
    const response = await fetch(`${host.origin}/files/${attachmentId}`, { headers: allowed() });
    expect(Buffer.from(await response.arrayBuffer()).equals(bytes)).toBe(true);
    expect(decodeURIComponent(response.headers.get('x-file-name') ?? '')).toBe(name);
    expect(decodeURIComponent(response.headers.get('x-media-type') ?? '')).toBe('image/jpeg');
  });

  it('never open as a page of this origin', async () => {
    const put = await send('/files', {
      method: 'POST',
      headers: { ...allowed(), 'x-file-name': 'a.html', 'x-media-type': 'text%2Fhtml' },
      body: '<script>alert(1)</script>',
    });
    const got = await send(`/files/${JSON.parse(put.text).attachmentId}`, { headers: allowed() });
    expect(got.headers['content-type']).toBe('application/octet-stream');
    expect(got.headers['content-disposition']).toBe('attachment');
  });

  it('need a name that can be read', async () => {
    const headers = { ...allowed(), 'x-file-name': '%E0%A4%A', 'x-media-type': 'image%2Fpng' };
    expect((await send('/files', { method: 'POST', headers, body: 'x' })).status).toBe(400);
    expect((await send('/files/none', { headers: allowed() })).status).toBe(404);
  });
});

describe('its events', () => {
  it('tell every open stream, and forget the closed ones', async () => {
    const stop = new AbortController();
    const response = await fetch(`${host.origin}/events`, { headers: allowed(), signal: stop.signal });
    const reader = response.body?.getReader();
    core.tellChanged(['visits', 'customers']);
    let text = '';
    while (!text.includes('}')) text += Buffer.from((await reader?.read())?.value ?? []).toString();
    expect(text.trim()).toBe('{"topics":["visits","customers"]}');
    stop.abort();
  });

  it('stop when the host does', async () => {
    const before = core.listenerCount();
    const other = await startBrowserHost({ core, rendererFolder: page.folder, port: 0, logFault: () => '' });
    expect(core.listenerCount()).toBe(before + 1);
    const response = await fetch(`${other.origin}/events`, { headers: allowed(other) });
    await other.close();
    expect(core.listenerCount()).toBe(before);
    await expect(response.text().catch(() => 'cut off')).resolves.toBeTypeOf('string');
  });
});

describe('whatever is sent to it', () => {
  it('a bug of the core is answered by a reference and logged', async () => {
    const answer = await call('test.throw', '{}');
    expect(answer.status).toBe(500);
    expect(JSON.parse(answer.text)).toEqual({ ok: false, error: { code: 'internal', data: { ref: 'ref-1' } } });
    expect(faults).toHaveLength(1);
  });

  it('is answered by a reply: 10,000 random payloads to the real core', { timeout: 240_000 }, async () => {
    const real: TestCore = openTestCore();
    const fuzzed = await startBrowserHost({
      core: real.core,
      rendererFolder: page.folder,
      port: 0,
      logFault: (error) => {
        throw error;
      },
    });
    try {
      const name = fc.oneof(
        fc.constantFrom(
          'app.status',
          'session.signIn',
          'app.completeFirstRun',
          'visits.list',
          '__proto__',
          'constructor',
          'toString',
        ),
        fc.string({ maxLength: 40 }),
      );
      const body = fc.oneof(
        fc.json({ maxDepth: 4 }),
        fc.string({ unit: 'binary', maxLength: 200 }),
        fc.uint8Array({ maxLength: 200 }).map((bytes) => Buffer.from(bytes)),
      );
      const payloads = fc.sample(fc.tuple(name, body), { numRuns: 10_000, seed: 20_260_301 });
      let replies = 0;
      const headers = allowed(fuzzed);
      const sendSome = async (): Promise<void> => {
        for (let next = payloads.pop(); next !== undefined; next = payloads.pop()) {
          const response = await fetch(`${fuzzed.origin}/rpc/${encodeName(next[0])}`, {
            method: 'POST',
            headers,
            body: next[1],
          });
          expect([200, 400]).toContain(response.status);
          expect(await response.json()).toHaveProperty('ok');
          replies += 1;
        }
      };
      await Promise.all(Array.from({ length: 8 }, sendSome));
      expect(replies).toBe(10_000);
    } finally {
      await fuzzed.close();
      real.remove();
    }
  });
});

/** The status of what a plain socket gets: no client tidies these lines. */
function sendRaw(text: string): Promise<string | undefined> {
  return new Promise((resolve, reject) => {
    const socket = connectSocket({ host: '127.0.0.1', port: host.port });
    let answer = '';
    socket.on('data', (chunk) => {
      answer += chunk.toString();
    });
    socket.on('error', reject);
    socket.on('close', () => resolve(answer.split(' ')[1]));
    socket.write(text);
  });
}

/** A lone surrogate has no encoding; the host sees its replacement. */
function encodeName(name: string): string {
  return encodeURIComponent(name.toWellFormed());
}

/** Node's client sends Latin-1 paths only. */
function encodeNonLatin(path: string): string {
  return path.replaceAll(/[^\u0020-\u007e]/gu, (letter) => encodeURIComponent(letter));
}
