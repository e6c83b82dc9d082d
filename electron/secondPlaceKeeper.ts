/** Keeps the second place up with this computer: soon after each backup and each new file, and every hour. */
import { join } from 'node:path';
import { listAttachmentHashes } from '../db/attachments.ts';
import type { BackupFolder } from '../db/backups.ts';
import { type CarriedOver, carryOver, SecondPlaceNotReached } from '../db/carryOver.ts';
import { findDeviceId } from '../db/device.ts';
import type { Store } from '../db/openStore.ts';
import { type StorageFailure, storageFailureOf } from './operations/storageFailure.ts';
import {
  chooseSecondPlace,
  type FolderRefused,
  readSecondPlace,
  rootOf,
  type SecondPlace,
  writeSecondPlace,
} from './secondPlace.ts';

export type SecondPlaceState = {
  readonly folder: string;
  /** Everything that was here at this moment is there too; null: never yet. */
  readonly lastAt: string | null;
  readonly lastCopyAt: string | null;
  readonly isOnSameDisk: boolean;
  /** The last try of this start, where it failed. */
  readonly trouble: { readonly at: string; readonly why: 'not-reached' | StorageFailure } | null;
  /** Files here whose bytes were altered since they were taken: left out. */
  readonly damagedFiles: number;
};

export type SecondPlaceKeeper = {
  /** null: none was chosen. */
  readonly state: () => SecondPlaceState | null;
  readonly choose: (folder: string | null) => FolderRefused | null;
  /** Resolves when everything that is here now is there, or when that has failed. */
  readonly carry: () => Promise<void>;
  /** The same, soon: several wishes are one. */
  readonly carrySoon: () => void;
  readonly copiesThere: () => BackupFolder | null;
  readonly stop: () => void;
};

const SOON_MS = 2_000;
const LOOK_EVERY_MS = 3_600_000;

export function keepSecondPlace(options: {
  readonly dataFolder: string;
  readonly store: () => Store;
  readonly here: BackupFolder;
  readonly openCopies: (folder: string) => BackupFolder;
  /** The demo is copied nowhere. */
  readonly isWanted: () => boolean;
  readonly clock: () => string;
  readonly logFault: (error: unknown) => void;
  readonly changed: () => void;
}): SecondPlaceKeeper {
  const { dataFolder, clock } = options;
  let place: SecondPlace | null = readSecondPlace(dataFolder);
  let trouble: SecondPlaceState['trouble'] = null;
  let damagedFiles = 0;
  let isStopped = false;
  let running: Promise<void> | null = null;
  let soon: NodeJS.Timeout | null = null;

  async function carryOnce(): Promise<void> {
    const to = place;
    if (to === null || isStopped || !options.isWanted()) return;
    const startedAt = clock();
    try {
      done(to, startedAt, await carryOver(routes(to)));
    } catch (error) {
      if (!(error instanceof SecondPlaceNotReached)) options.logFault(error);
      trouble = {
        at: startedAt,
        why: error instanceof SecondPlaceNotReached ? 'not-reached' : (storageFailureOf(error) ?? 'failed'),
      };
    }
    if (!isStopped) options.changed();
  }

  function routes(to: SecondPlace): Parameters<typeof carryOver>[0] {
    return {
      root: rootOf(to),
      here: options.here,
      there: options.openCopies(join(rootOf(to), 'copies')),
      attachments: join(dataFolder, 'attachments'),
      wanted: listAttachmentHashes(options.store().raw),
      isStopped: () => isStopped,
    };
  }

  function done(to: SecondPlace, startedAt: string, carried: CarriedOver): void {
    // Stopped or chosen anew meanwhile: not all of it is there.
    if (isStopped || place !== to) return;
    trouble = null;
    damagedFiles = carried.damaged;
    place = { ...to, lastAt: startedAt, lastCopyAt: carried.newestCopyAt };
    writeSecondPlace(dataFolder, place);
  }

  /** One at a time: whoever asks while one is under way waits for the next one, which sees what is new. */
  async function carry(): Promise<void> {
    while (running !== null) await running;
    running = carryOnce().finally(() => {
      running = null;
    });
    await running;
  }

  const timer = setInterval(() => void carry(), LOOK_EVERY_MS);
  timer.unref();
  return {
    state: () =>
      place === null
        ? null
        : {
            folder: rootOf(place),
            lastAt: place.lastAt,
            lastCopyAt: place.lastCopyAt,
            isOnSameDisk: place.isOnSameDisk,
            trouble,
            damagedFiles,
          },
    choose(folder) {
      if (folder === null) {
        place = null;
      } else {
        const chosen = chooseSecondPlace(folder, dataFolder, findDeviceId(options.store().raw));
        if (!chosen.ok) return chosen.why;
        place = chosen.place;
      }
      trouble = null;
      writeSecondPlace(dataFolder, place);
      return null;
    },
    carry,
    carrySoon() {
      if (place === null || isStopped || soon !== null) return;
      soon = setTimeout(() => {
        soon = null;
        void carry();
      }, SOON_MS);
      soon.unref();
    },
    copiesThere: () => (place === null ? null : options.openCopies(join(rootOf(place), 'copies'))),
    stop() {
      isStopped = true;
      clearInterval(timer);
      if (soon !== null) clearTimeout(soon);
    },
  };
}
