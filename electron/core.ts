/**
 * What both hosts serve: the operations by name and the files by attachment. A host adds transport and its guards, no rule.
 */
import type { AnyReply } from './contract/operation.ts';
import type { FileFound, FileToPut, PutFileReply } from './contract/wire.ts';

/** One window or browser tab; sign-in belongs to it. */
export type ClientId = string;

/** Something changed: whoever shows one of these subjects asks again. */
export type ChangeListener = (topics: readonly string[]) => void;

export type Core = {
  readonly call: (name: string, input: unknown, clientId: ClientId) => Promise<AnyReply>;
  readonly putFile: (file: FileToPut, clientId: ClientId) => Promise<PutFileReply>;
  readonly getFile: (attachmentId: string, clientId: ClientId) => Promise<FileFound | null>;
  readonly onChanged: (listener: ChangeListener) => () => void;
  readonly close: () => void;
};
