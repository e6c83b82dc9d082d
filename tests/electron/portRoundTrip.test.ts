/** The window's port transport against the port server, over a real channel as between two processes. */
import { EventEmitter } from 'node:events';
import { MessageChannel } from 'node:worker_threads';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { everyTopic, fileLimitBytes, inputLimitBytes } from '../../electron/contract/wire.ts';
import { adaptPort } from '../../electron/portAdapter.ts';
import { servePort } from '../../electron/portServer.ts';
import { createPortTransport, type PortTransport } from '../../renderer/transport/portTransport.ts';
import { createEchoCore, type EchoCore } from '../support/echoCore.ts';
import { openTestCore } from '../support/testCore.ts';

let core: EchoCore;
let transport: PortTransport;
let faults: unknown[];
let stops: (() => void)[];

const logFault = (error: unknown): string => {
  faults.push(error);
  return `ref-${faults.length}`;
};

function connectOnce(): () => void {
  const { port1, port2 } = new MessageChannel();
  const stop = servePort(core, adaptPort(port1), 'window-1', logFault);
  transport.attach(port2);
  stops.push(stop);
  return stop;
}

beforeEach(() => {
  core = createEchoCore();
  transport = createPortTransport();
  faults = [];
  stops = [];
});
afterEach(() => {
  transport.detach();
  for (const stop of stops) stop();
});

describe('a call over the port', () => {
  it('brings the core’s reply, for the client the port was made for', async () => {
    connectOnce();
    const reply = await transport.call('test.echo', { visit: 1 });
    expect(reply).toEqual({ ok: true, value: { input: { visit: 1 }, clientId: 'window-1' } });
  });

  it('keeps many calls apart', async () => {
    connectOnce();
    const replies = await Promise.all(Array.from({ length: 200 }, (_, n) => transport.call('test.echo', n)));
    expect(replies.map((reply) => (reply.ok ? reply.value : null))).toEqual(
      Array.from({ length: 200 }, (_, n) => ({ input: n, clientId: 'window-1' })),
    );
  });

  it('asked before the port is there waits for it', async () => {
    const asked = transport.call('test.echo', 1);
    expect(transport.connection()).toBe('connecting');
    connectOnce();
    expect(await asked).toMatchObject({ ok: true });
    expect(transport.connection()).toBe('online');
  });

  it('answers a bug by a reference', async () => {
    connectOnce();
    expect(await transport.call('test.throw', {})).toEqual({
      ok: false,
      code: 'internal',
      error: { code: 'internal', data: { ref: 'ref-1' } },
    });
    expect(faults).toHaveLength(1);
  });

  it('answers a reply that can’t cross as a bug', async () => {
    connectOnce();
    expect(await transport.call('test.uncloneable', {})).toMatchObject({ ok: false, error: { code: 'internal' } });
  });

  it('answers an input that can’t cross as a bug of the caller', async () => {
    connectOnce();
    expect(await transport.call('test.echo', () => 1)).toMatchObject({ ok: false, error: { code: 'internal' } });
  });

  it('refuses an input over the limit, even one that runs in a circle', async () => {
    connectOnce();
    const circle: unknown[] = [];
    circle.push(circle, circle);
    for (const input of [
      'x'.repeat(inputLimitBytes),
      new Array(inputLimitBytes).fill(null),
      circle,
      new Uint8Array(inputLimitBytes + 1),
    ]) {
      expect(await transport.call('test.echo', input)).toMatchObject({ ok: false, error: { code: 'bad-input' } });
    }
    expect(core.calls).toEqual([]);
  });
});

describe('when the core is lost', () => {
  it('whoever waits hears offline, and so does whoever asks', async () => {
    connectOnce();
    const states: string[] = [];
    transport.onConnection((state) => states.push(state));
    const waiting = transport.call('test.never', {});
    const putting = transport.putFile({ bytes: new Uint8Array(1), mediaType: 'a', fileName: 'b', takenAt: null });
    transport.detach();
    expect(await waiting).toEqual({ ok: false, error: { code: 'offline', data: {} } });
    expect(await putting).toEqual({ ok: false, code: 'offline' });
    expect(await transport.call('test.echo', {})).toMatchObject({ error: { code: 'offline' } });
    expect(await transport.getFile('any')).toEqual({ ok: false, code: 'offline' });
    expect(states).toEqual(['offline']);
  });

  it('a new port brings it back and has everything asked again', async () => {
    const topics: (readonly string[])[] = [];
    transport.onChanged((changed) => topics.push(changed));
    connectOnce();
    transport.detach();
    connectOnce();
    expect(await transport.call('test.echo', 1)).toMatchObject({ ok: true });
    expect(topics).toEqual([[everyTopic]]);
  });
});

describe('files over the port', () => {
  it('come back byte for byte, also from a view into a larger buffer', async () => {
    connectOnce();
    const whole = new Uint8Array(1_000_000).map((_, index) => index % 251);
    const view = whole.subarray(10, 500_010);
    const put = await transport.putFile({ bytes: view, mediaType: 'image/jpeg', fileName: 'Żar.jpg', takenAt: null });
    if (!put.ok) throw new Error(put.code);
    const got = await transport.getFile(put.attachmentId);
    if (!got.ok) throw new Error(got.code);
    expect(Buffer.from(got.file.bytes).equals(Buffer.from(view))).toBe(true);
    expect(got.file.bytes.buffer.byteLength).toBe(view.byteLength);
    expect(got.file).toMatchObject({ mediaType: 'image/jpeg', fileName: 'Żar.jpg' });
  });

  it('are refused over the limit, and told missing when they are', async () => {
    connectOnce();
    const tooLarge = { bytes: new Uint8Array(fileLimitBytes + 1), mediaType: 'a', fileName: 'b', takenAt: null };
    expect(await transport.putFile(tooLarge)).toEqual({ ok: false, code: 'too-large' });
    expect(await transport.getFile('none')).toEqual({ ok: false, code: 'not-found' });
  });
});

describe('changes over the port', () => {
  it('reach the window until the port is closed', async () => {
    const topics: (readonly string[])[] = [];
    transport.onChanged((changed) => topics.push(changed));
    const stop = connectOnce();
    core.tellChanged(['visits']);
    await transport.call('test.echo', 1);
    expect(topics).toEqual([['visits']]);
    stop();
    expect(core.listenerCount()).toBe(0);
  });

  it('are forgotten when the window goes away', async () => {
    connectOnce();
    await transport.call('test.echo', 1);
    transport.detach();
    await expect.poll(() => core.listenerCount()).toBe(0);
  });

  it('reach every listener although one of them fails', async () => {
    const failures: unknown[] = [];
    const catchFailure = (error: unknown): void => void failures.push(error);
    const others = process.listeners('uncaughtException');
    process.removeAllListeners('uncaughtException').on('uncaughtException', catchFailure);
    const heard: string[] = [];
    transport.onChanged(() => {
      throw new Error('a screen’s bug');
    });
    transport.onChanged(([topic]) => heard.push(topic ?? ''));
    connectOnce();
    core.tellChanged(['visits']);
    await transport.call('test.echo', 1);
    process.removeAllListeners('uncaughtException');
    for (const listener of others) process.on('uncaughtException', listener);
    expect(heard).toEqual(['visits']);
    expect(failures).toHaveLength(1);
  });
});

describe('the port server', () => {
  it('outlives 10,000 random messages to the real core, and answers each that has a number', {
    timeout: 120_000,
  }, async () => {
    const real = openTestCore();
    const port = new FakePort();
    const stop = servePort(real.core, adaptPort(port), 'window-1', logFault);
    const shape = fc.oneof(
      fc.anything({ maxDepth: 3 }),
      fc.record({ kind: fc.anything({ maxDepth: 1 }), requestId: fc.anything({ maxDepth: 1 }) }),
      fc.record({
        kind: fc.constant('call'),
        requestId: fc.integer(),
        name: fc.oneof(fc.constantFrom('app.status', 'session.signIn', 'visits.list', '__proto__'), fc.string()),
        input: fc.anything({ maxDepth: 3, withBigInt: true, withDate: true, withMap: true, withTypedArray: true }),
      }),
      fc.record({ kind: fc.constant('put-file'), requestId: fc.integer(), file: fc.anything({ maxDepth: 2 }) }),
      fc.record({ kind: fc.constant('get-file'), requestId: fc.integer(), attachmentId: fc.anything({ maxDepth: 1 }) }),
    );
    const messages = fc.sample(shape, { numRuns: 10_000, seed: 20_260_301 });
    let numbered = 0;
    for (const message of messages) {
      const isObject = typeof message === 'object' && message !== null;
      if (isObject && 'requestId' in message && Number.isSafeInteger(message.requestId)) numbered += 1;
      port.emit('message', { data: message });
      await Promise.resolve();
    }
    await expect.poll(() => port.posted.length, { timeout: 120_000 }).toBe(numbered);
    expect(numbered).toBeGreaterThan(5_000);
    expect(faults).toEqual([]);
    stop();
    real.remove();
  });
});

/** Electron's kind of port, without a channel: what is posted stays here. */
class FakePort extends EventEmitter {
  readonly posted: unknown[] = [];
  postMessage(message: unknown): void {
    this.posted.push(structuredClone(message));
  }
  start(): void {}
  close(): void {}
}
