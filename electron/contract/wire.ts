/**
 * How the hosts and the window's transports talk: messages on the port, paths and headers on loopback HTTP, size limits of both.
 * Free of zod, since the preload and the window load it as code.
 */
import type { AnyReply } from './operation.ts';

export const inputLimitBytes = 2 * 1024 * 1024;
export const fileLimitBytes = 64 * 1024 * 1024;

/** In place of the topics when changes may have been missed: ask for everything again. */
export const everyTopic = '*';

export type FileFound = { readonly bytes: Uint8Array; readonly mediaType: string; readonly fileName: string };
export type FileToPut = FileFound & { readonly takenAt: string | null };
export type PutFileReply =
  | { readonly ok: true; readonly attachmentId: string; readonly sha256: string }
  | {
      readonly ok: false;
      readonly code: 'not-signed-in' | 'too-large' | 'type-refused' | 'not-saved' | 'internal' | 'offline';
    };
export type GetFileReply =
  | { readonly ok: true; readonly file: FileFound }
  | { readonly ok: false; readonly code: 'not-found' | 'internal' | 'offline' };

export type PortRequest =
  | { readonly kind: 'call'; readonly requestId: number; readonly name: string; readonly input: unknown }
  | { readonly kind: 'put-file'; readonly requestId: number; readonly file: FileToPut }
  | { readonly kind: 'get-file'; readonly requestId: number; readonly attachmentId: string };

export type PortMessage =
  | { readonly kind: 'reply'; readonly requestId: number; readonly reply: AnyReply | PutFileReply | GetFileReply }
  | { readonly kind: 'changed'; readonly topics: readonly string[] };

/** What the preload puts on `window`. Asking to connect makes the port arrive as a window message, which alone can carry one. */
export type DesktopBridge = { readonly connect: () => Promise<boolean> };
export const bridgeName = 'lightoff';
export const connectChannel = 'lightoff:connect';
export const portMessage = 'lightoff:port';
export const coreLostMessage = 'lightoff:core-lost';

export const httpPaths = { rpc: '/rpc/', files: '/files', events: '/events' } as const;
/** File names and instants travel percent-encoded: header values are Latin-1. */
export const httpHeaders = {
  client: 'x-client',
  fileName: 'x-file-name',
  mediaType: 'x-media-type',
  takenAt: 'x-taken-at',
} as const;
