/** What the core answers while its store cannot be opened: which copies there are, and going back to one of them. */
import type { Rescue } from '../db/rescue.ts';
import type { StoreTrouble } from '../db/storeTrouble.ts';
import type { AnyReply } from './contract/operation.ts';
import { rescueOperations } from './contract/rescue.ts';

export function answerRescue(
  name: string,
  input: unknown,
  at: {
    readonly rescue: Rescue;
    readonly trouble: StoreTrouble;
    readonly dataFolder: string;
    readonly now: string;
    /** The copy is in its place: opens it. */
    readonly reopen: () => void;
  },
): AnyReply {
  switch (name) {
    case 'rescue.look': {
      const { folder, list } = at.rescue;
      return { ok: true, value: { trouble: at.trouble, dataFolder: at.dataFolder, folder, copies: list() } };
    }
    case 'rescue.restore': {
      const parsed = rescueOperations['rescue.restore'].input.safeParse(input);
      if (!parsed.success)
        return refused('bad-input', { issues: [{ path: 'name', message: 'the name of a copy is needed' }] });
      const done = at.rescue.restore(parsed.data.name, at.now);
      if (!done.ok && done.why === 'not-found')
        return refused('not-found', { entity: 'backups', id: parsed.data.name });
      if (!done.ok) return refused('copy-damaged', { why: done.why });
      at.reopen();
      return { ok: true, value: { replacedKeptAs: done.replacedKeptAs } };
    }
    default:
      return refused('store-closed', { trouble: at.trouble });
  }
}

function refused(code: string, data: object): AnyReply {
  return { ok: false, error: { code, data } };
}
