/** How the window reaches the core, before types: desktop and browser differ below this line only. Nothing here throws or rejects. */
import type { AnyReply } from '../../electron/contract/operation.ts';
import type { FileToPut, GetFileReply, PutFileReply } from '../../electron/contract/wire.ts';

/** `locked-out`: this tab holds no valid token; the address of the current start has to be opened again. */
export type ConnectionState = 'connecting' | 'online' | 'offline' | 'locked-out';

export type RawTransport = {
  readonly call: (name: string, input: unknown) => Promise<AnyReply>;
  readonly putFile: (file: FileToPut) => Promise<PutFileReply>;
  readonly getFile: (attachmentId: string) => Promise<GetFileReply>;
  /** Hears the changed topics, or `everyTopic` alone after changes may have been missed. Answers how to stop hearing. */
  readonly onChanged: (listener: (topics: readonly string[]) => void) => () => void;
  readonly connection: () => ConnectionState;
  readonly onConnection: (listener: (state: ConnectionState) => void) => () => void;
};

export const offlineReply: AnyReply = { ok: false, error: { code: 'offline', data: {} } };
export const offlineFile = { ok: false, code: 'offline' } as const;
