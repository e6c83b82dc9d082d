/**
 * What both hosts serve: the operations by name and the files by attachment. A host adds transport and its guards, no rule.
 */
import type { AnyReply } from './contract/operation.ts';

/** One window or browser tab; sign-in belongs to it. */
export type ClientId = string;

export type StoredFile = { readonly bytes: Uint8Array; readonly mediaType: string; readonly fileName: string };

export type FileReply =
  | { readonly ok: true; readonly attachmentId: string; readonly sha256: string }
  | { readonly ok: false; readonly code: 'not-signed-in' | 'too-large' | 'type-refused' | 'not-saved' };

/** Something changed: whoever shows one of these subjects asks again. */
export type ChangeListener = (topics: readonly string[]) => void;

export type Core = {
  readonly call: (name: string, input: unknown, clientId: ClientId) => Promise<AnyReply>;
  readonly putFile: (file: StoredFile & { readonly takenAt: string | null }, clientId: ClientId) => Promise<FileReply>;
  readonly getFile: (attachmentId: string, clientId: ClientId) => Promise<StoredFile | null>;
  readonly onChanged: (listener: ChangeListener) => () => void;
  readonly close: () => void;
};
