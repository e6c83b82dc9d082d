/** The window's HTTP transport against the browser host. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type BrowserHost, startBrowserHost } from '../../electron/browserHost.ts';
import { everyTopic } from '../../electron/contract/wire.ts';
import { createHttpTransport, type HttpTransport } from '../../renderer/transport/httpTransport.ts';
import { createEchoCore, type EchoCore } from '../support/echoCore.ts';

const clientId = '0d9f4a52-4d2e-4c57-9b1e-3f0a6c1d2e3f';
let core: EchoCore;
let host: BrowserHost;
let transport: HttpTransport;

const start = (port: number) => startBrowserHost({ core, rendererFolder: '/nowhere', port, logFault: () => 'ref-1' });

beforeEach(async () => {
  core = createEchoCore();
  host = await start(0);
  transport = createHttpTransport({ origin: host.origin, token: host.token, clientId });
});
afterEach(async () => {
  transport.listen(false);
  await host.close();
});

describe('the HTTP transport', () => {
  it('brings the core’s reply', async () => {
    expect(await transport.call('test.echo', { visit: 1 })).toEqual({
      ok: true,
      value: { input: { visit: 1 }, clientId },
    });
    expect(await transport.call('no/such?operation#', undefined)).toEqual({
      ok: false,
      error: { code: 'unknown-operation', data: { name: 'no/such?operation#' } },
    });
    expect(await transport.call('test.throw', {})).toMatchObject({
      error: { code: 'internal', data: { ref: 'ref-1' } },
    });
  });

  it('carries files whole', async () => {
    const bytes = new Uint8Array(300_000).map((_, index) => index % 253);
    const file = {
      bytes,
      mediaType: 'image/png',
      fileName: 'Kesselschild 日本.png',
      takenAt: '2026-03-02T13:00:00.000Z',
    };
    const put = await transport.putFile(file);
    if (!put.ok) throw new Error(put.code);
    const got = await transport.getFile(put.attachmentId);
    if (!got.ok) throw new Error(got.code);
    expect(Buffer.from(got.file.bytes).equals(Buffer.from(bytes))).toBe(true);
    expect(got.file).toMatchObject({ mediaType: 'image/png', fileName: 'Kesselschild 日本.png' });
    expect(await transport.getFile('none')).toEqual({ ok: false, code: 'not-found' });
  });

  it('hears changes as they come', async () => {
    const topics: (readonly string[])[] = [];
    transport.onChanged((changed) => topics.push(changed));
    transport.listen(true);
    await expect.poll(() => transport.connection()).toBe('online');
    core.tellChanged(['visits']);
    core.tellChanged(['customers', 'app']);
    await expect.poll(() => topics).toEqual([['visits'], ['customers', 'app']]);
  });

  it('hides behind a token that is refused, and says so', async () => {
    const stranger = createHttpTransport({ origin: host.origin, token: 'stale', clientId });
    expect(await stranger.call('test.echo', {})).toMatchObject({ error: { code: 'offline' } });
    expect(stranger.connection()).toBe('locked-out');
    const nobody = createHttpTransport({ origin: host.origin, token: null, clientId });
    expect(nobody.connection()).toBe('locked-out');
    expect(await nobody.getFile('file-1')).toEqual({ ok: false, code: 'offline' });
    expect(core.calls).toEqual([]);
  });

  it('answers offline when nobody is there, or when somebody else is', async () => {
    await host.close();
    expect(await transport.call('test.echo', {})).toEqual({ ok: false, error: { code: 'offline', data: {} } });
    expect(await transport.putFile({ bytes: new Uint8Array(1), mediaType: 'a', fileName: 'b', takenAt: null })).toEqual(
      {
        ok: false,
        code: 'offline',
      },
    );
    expect(transport.connection()).toBe('offline');
  });

  it('asks for everything again when the stream was cut and is back', async () => {
    const topics: (readonly string[])[] = [];
    transport.onChanged((changed) => topics.push(changed));
    transport.listen(true);
    await expect.poll(() => transport.connection()).toBe('online');
    // A hidden tab lets go of the stream.
    transport.listen(false);
    core.tellChanged(['visits']);
    transport.listen(true);
    await expect.poll(() => topics, { timeout: 5_000 }).toEqual([[everyTopic]]);
  });

  it('notices that the host stopped', async () => {
    transport.listen(true);
    await expect.poll(() => transport.connection()).toBe('online');
    await host.close();
    await expect.poll(() => transport.connection(), { timeout: 5_000 }).toBe('offline');
  });
});
