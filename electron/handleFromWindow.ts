/**
 * The one door for what a window asks of the main process: it hears only the main frame of our own page, takes only what
 * `parse` accepts, and answers a value whatever happens.
 */
import type { IpcMain, WebContents } from 'electron';
import type { FaultLog } from './faultLog.ts';
import { isOwnPage } from './navigationPolicy.ts';

export type WindowRequest<I> = {
  readonly channel: string;
  /** Null refuses. */
  readonly parse: (args: readonly unknown[]) => I | null;
  readonly handle: (input: I, sender: WebContents) => boolean;
};

export function handleFromWindow<I>(ipc: Pick<IpcMain, 'handle'>, request: WindowRequest<I>, logFault: FaultLog): void {
  ipc.handle(request.channel, (event, ...args: unknown[]): boolean => {
    try {
      if (!isFromOwnMainFrame(event)) return false;
      const input = request.parse(args);
      return input === null ? false : request.handle(input, event.sender);
    } catch (error) {
      logFault(error);
      return false;
    }
  });
}

/** The part of an IPC event that tells who sent it. */
export type SentBy = {
  readonly senderFrame: { readonly url: string; readonly parent: unknown } | null;
  readonly sender: { readonly mainFrame: unknown };
};

export function isFromOwnMainFrame(event: SentBy): boolean {
  const frame = event.senderFrame;
  return frame !== null && frame.parent === null && frame === event.sender.mainFrame && isOwnPage(frame.url);
}
