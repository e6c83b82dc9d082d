/**
 * The core as both hosts start it: takes the data folder for itself and opens the store. Where the store is damaged or gone it
 * stays, without one, and offers to go back to a copy.
 */
import { join } from 'node:path';
import { openBackupFolder } from '../db/backups.ts';
import { takeFolderLock } from '../db/folderLock.ts';
import { storePath } from '../db/openStore.ts';
import { openRescue } from '../db/rescue.ts';
import { type StoreTrouble, storeTroubleOf } from '../db/storeTrouble.ts';
import { answerRescue } from './answerRescue.ts';
import type { ChangeListener, Core } from './core.ts';
import { type CoreOptions, openCore } from './openCore.ts';
import { hasIntactChains } from './operations/sealChains.ts';
import { readSecondPlace, rootOf } from './secondPlace.ts';

export type { CoreOptions } from './openCore.ts';

type State = { readonly opened: Core } | { readonly trouble: StoreTrouble };

/** Throws where going back to a copy would not help: the folder is in use or cannot be written to, or the program is too old. */
export function createCore(options: CoreOptions): Core {
  const lock = takeFolderLock(options.dataFolder);
  const listeners = new Set<ChangeListener>();
  const tell: ChangeListener = (topics) => {
    for (const listener of listeners) listener(topics);
  };

  function open(): State {
    try {
      const opened = openCore(options);
      opened.onChanged(tell);
      return { opened };
    } catch (error) {
      const trouble = options.startInDemo === true ? null : storeTroubleOf(error);
      if (trouble === null) throw error;
      return { trouble };
    }
  }

  let state: State;
  try {
    state = open();
  } catch (error) {
    lock.release();
    throw error;
  }

  return {
    async call(name, input, clientId) {
      if ('opened' in state) return state.opened.call(name, input, clientId);
      const migrations = join(options.appRoot, 'db', 'migrations');
      const copiesIn = (folder: string) => openBackupFolder(join(folder, 'copies'), migrations, hasIntactChains);
      const second = readSecondPlace(options.dataFolder);
      return answerRescue(name, input, {
        rescue: openRescue(
          storePath(options.dataFolder),
          copiesIn(options.dataFolder),
          second === null ? null : copiesIn(rootOf(second)),
        ),
        trouble: state.trouble,
        dataFolder: options.dataFolder,
        now: (options.clock ?? (() => new Date().toISOString()))(),
        reopen() {
          state = open();
          tell(['app']);
        },
      });
    },
    putFile: async (file, clientId) =>
      'opened' in state ? state.opened.putFile(file, clientId) : { ok: false, code: 'not-saved' },
    getFile: async (attachmentId, clientId) =>
      'opened' in state ? state.opened.getFile(attachmentId, clientId) : null,
    onChanged(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close() {
      if ('opened' in state) state.opened.close();
      lock.release();
    },
  };
}
