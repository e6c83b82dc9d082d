/** A core of four operations for tests of the hosts: says what it got, and can fail in the ways a host must outlive. */
import type { FileFound } from '../../electron/contract/wire.ts';
import type { ChangeListener, Core } from '../../electron/core.ts';

export type EchoCore = Core & {
  readonly tellChanged: (topics: readonly string[]) => void;
  readonly listenerCount: () => number;
  readonly calls: { readonly name: string; readonly input: unknown; readonly clientId: string }[];
};

export function createEchoCore(): EchoCore {
  const files = new Map<string, FileFound>();
  const listeners = new Set<ChangeListener>();
  const calls: EchoCore['calls'] = [];
  return {
    calls,
    call: async (name, input, clientId) => {
      calls.push({ name, input, clientId });
      if (name === 'test.throw') throw new Error('a bug with a customer’s name in it');
      if (name === 'test.uncloneable') return { ok: true, value: () => 'a function' };
      if (name === 'test.never') return new Promise(() => {});
      if (name === 'test.echo') return { ok: true, value: { input, clientId } };
      return { ok: false, error: { code: 'unknown-operation', data: { name } } };
    },
    putFile: async ({ bytes, mediaType, fileName }) => {
      const attachmentId = `file-${files.size + 1}`;
      files.set(attachmentId, { bytes: new Uint8Array(bytes), mediaType, fileName });
      return { ok: true, attachmentId, sha256: 'unhashed' };
    },
    getFile: async (attachmentId) => files.get(attachmentId) ?? null,
    onChanged: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close: () => {},
    tellChanged: (topics) => {
      for (const listener of listeners) listener(topics);
    },
    listenerCount: () => listeners.size,
  };
}
