/**
 * The core on an open store: the operations on it and the files beside it. Every call passes one door that checks the name, the
 * input, who is asking and the output; nothing a caller sends can make it throw.
 */

import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { uptime } from 'node:os';
import { join } from 'node:path';
import { type AttachmentFiles, openAttachmentFiles } from '../db/attachmentFiles.ts';
import { findAttachment } from '../db/attachments.ts';
import { type BackupFolder, openBackupFolder } from '../db/backups.ts';
import { openStore, type Store, storePath } from '../db/openStore.ts';
import { findCompany, findStaff, listStaff } from '../db/people.ts';
import { finishRestore, replacedStores, restoreStaged, stageRestore } from '../db/restore.ts';
import { onceFree } from '../db/storeTaken.ts';
import { StoreMissing, storeTroubleOf } from '../db/storeTrouble.ts';
import type { StaffRole } from '../domain/vocabulary/people.ts';
import { contract, isOperationName, type OperationName } from './contract/index.ts';
import { type AnyReply, commonErrors } from './contract/operation.ts';
import { type FileFound, fileLimitBytes, type PutFileReply } from './contract/wire.ts';
import type { ChangeListener, ClientId, Core } from './core.ts';
import { keepDailyCopies } from './dailyCopies.ts';
import { buildDemoStore } from './demo/demoStore.ts';
import { drawPackets } from './demo/drawPackets.ts';
import { type FaultLog, openFaultLog } from './faultLog.ts';
import { closeDays } from './operations/closeDays.ts';
import type { CoreServices } from './operations/coreServices.ts';
import { ASIDE_FOLDER, createExportRuns } from './operations/exports/exportRuns.ts';
import { type Actor, type HandlerContext, OperationFailure } from './operations/handler.ts';
import { createListWorks } from './operations/imports/listWorks.ts';
import { handlers } from './operations/index.ts';
import { keepFile } from './operations/keepFile.ts';
import { createPinGuard } from './operations/pinGuard.ts';
import type { ProposalBasis } from './operations/planningHandlers.ts';
import { createPlanRuns } from './operations/planRuns.ts';
import { hasIntactChains } from './operations/sealChains.ts';
import { sniffMediaType } from './operations/sniffMediaType.ts';
import { storageFailureOf } from './operations/storageFailure.ts';
import type { DoneMove } from './operations/takeBackMove.ts';
import { keepSecondPlace } from './secondPlaceKeeper.ts';
import { keepWeeklyRehearsal } from './weeklyRehearsal.ts';

export type CoreOptions = {
  readonly dataFolder: string;
  readonly appRoot: string;
  readonly startInDemo?: boolean;
  /** The built files of the program's threads; another folder than that of the built program only in tests. */
  readonly threadsFolder?: URL;
  /** UTC now, ISO; another clock only in tests. */
  readonly clock?: () => string;
  readonly steadyClockMs?: () => number;
  /** Where a bug is written down; another place only in tests. */
  readonly logFault?: FaultLog;
};

/** By then the page is there. */
const DRAW_DEMO_AFTER_MS = 1500;

/** Throws when the store cannot be opened; nothing of it stays open then. */
export function openCore(options: CoreOptions): Core {
  const clock = options.clock ?? (() => new Date().toISOString());
  const migrationsFolder = join(options.appRoot, 'db', 'migrations');
  const logFault = options.logFault ?? openFaultLog(options.dataFolder, options.appRoot);
  const listeners = new Set<ChangeListener>();
  const signedIn = new Map<ClientId, string>();
  const pinGuard = createPinGuard(() => Date.parse(clock()));

  const threadsFolder = options.threadsFolder ?? new URL('.', import.meta.url);
  const planWorkerUrl = new URL('planWorker.js', threadsFolder);
  const plans = createPlanRuns<ProposalBasis, readonly DoneMove[]>(planWorkerUrl, logFault);

  const exports = createExportRuns();
  const listWorks = createListWorks();

  let purpose: 'real' | 'demo' = options.startInDemo === true ? 'demo' : 'real';
  const folderOf = (which: 'real' | 'demo'): string =>
    which === 'real' ? options.dataFolder : join(options.dataFolder, 'demo');
  const backupFolders = { real: openBackups('real'), demo: openBackups('demo') };

  function openBackups(which: 'real' | 'demo'): BackupFolder {
    return openCopies(join(folderOf(which), 'copies'));
  }

  function openCopies(folder: string): BackupFolder {
    return openBackupFolder(folder, migrationsFolder, hasIntactChains);
  }

  const open = (which: 'real' | 'demo'): Store => {
    const folder = folderOf(which);
    mkdirSync(folder, { recursive: true });
    rmSync(join(folder, ASIDE_FOLDER), { recursive: true, force: true });
    finishRestore(storePath(folder));
    if (which === 'real' && isGone(storePath(folder), backupFolders.real)) throw new StoreMissing();
    if (which === 'demo' && !existsSync(storePath(folder))) {
      buildDemoStore({ folder, appRoot: options.appRoot, migrationsFolder, now: clock() });
      setTimeout(drawDemoPackets, DRAW_DEMO_AFTER_MS).unref();
    }
    return openStore({
      path: storePath(folder),
      purpose: which,
      migrationsFolder,
      now: clock(),
      beforeMigration: (raw) => void backupFolders[which].make(raw, 'before-update', clock()),
    });
  };

  let store: Store = open(purpose);
  const secondPlace = keepSecondPlace({
    dataFolder: options.dataFolder,
    store: () => store,
    here: backupFolders.real,
    openCopies,
    isWanted: () => purpose === 'real',
    clock,
    logFault,
    changed: () => changed(['backups', 'app']),
  });
  const dailyCopies = keepDailyCopies({
    backups: () => backupFolders[purpose],
    store: () => store,
    // While a long write has the store the copy waits for the next look.
    isWanted: () => purpose === 'real' && store.isFree() && findCompany(store.db) !== undefined,
    beforeNewDay: () => {
      const now = clock();
      store.write({ actorId: null, now }, (writer) => closeDays(writer, store.raw, now));
    },
    clock,
    logFault,
    changed: () => {
      changed(['backups', 'app']);
      secondPlace.carrySoon();
    },
  });
  const rehearsal = keepWeeklyRehearsal({
    backups: backupFolders.real,
    migrationsFolder,
    workerUrl: new URL('rehearsalWorker.js', threadsFolder),
    isWanted: () => purpose === 'real',
    clock,
    logFault,
    changed: () => changed(['backups', 'app']),
  });
  dailyCopies.look();
  secondPlace.carrySoon();

  /** In the background: whatever ends the demo meanwhile ends this too. */
  function drawDemoPackets(): void {
    const drawn = store;
    const owner = drawn.raw.open ? listStaff(drawn.db).find(({ roles }) => roles.includes('owner')) : undefined;
    if (purpose !== 'demo' || owner === undefined) return;
    // The demo's own, also when somebody goes over to the real store meanwhile.
    const own = services();
    const logFault = (error: unknown) => (drawn.raw.open ? own.logFault(error) : undefined);
    drawPackets((now) => ({
      store: drawn,
      db: drawn.db,
      actor: { staffId: owner.id, name: owner.name, roles: owner.roles as StaffRole[] },
      clientId: 'demo',
      now,
      services: { ...own, logFault },
      write: (action) => drawn.write({ actorId: owner.id, now }, action),
    })).catch(logFault);
  }

  /** Before the store goes: all of it rests on this one. */
  function endWhatRuns(): void {
    plans.stopAll();
    exports.stopAll();
    listWorks.stopAll();
  }

  function switchStore(to: 'real' | 'demo'): void {
    const opened = openOrSay(to);
    endWhatRuns();
    store.close();
    purpose = to;
    store = opened;
    signedIn.clear();
    changed(['app']);
  }

  /** Leaving the demo must not end in a fault only because the firm's own store is damaged. */
  function openOrSay(which: 'real' | 'demo'): Store {
    try {
      return open(which);
    } catch (error) {
      const trouble = storeTroubleOf(error);
      throw trouble === null ? error : new OperationFailure('store-closed', { trouble });
    }
  }

  function restoreFrom(copyPath: string): string | null {
    const backups = backupFolders[purpose];
    const file = storePath(folderOf(purpose));
    // Made ready first: making room for the next copy may take away the one that is wanted.
    stageRestore(copyPath, file, clock());
    const kept = copyBeforeRestore(backups);
    endWhatRuns();
    store.close();
    let replaced: string | null = null;
    try {
      replaced = restoreStaged(file);
    } finally {
      store = open(purpose);
      signedIn.clear();
    }
    dailyCopies.forget();
    // What the store speaks of now may lie there alone.
    secondPlace.carrySoon();
    changed(['app']);
    return kept ?? replaced;
  }

  /** A store that is not whole cannot be copied as one, and is what a restore is for: the file itself is put aside anyway. */
  function copyBeforeRestore(backups: BackupFolder): string | null {
    try {
      return backups.make(store.raw, 'before-restore', clock()).name;
    } catch (error) {
      logFault(error);
      return null;
    }
  }

  function changed(topics: readonly string[]): void {
    for (const listener of listeners) listener(topics);
  }

  function actorFor(clientId: ClientId): Actor | null {
    const staffId = signedIn.get(clientId);
    const row = staffId === undefined ? undefined : findStaff(store.db, staffId);
    return row === undefined ? null : { staffId: row.id, name: row.name, roles: row.roles as StaffRole[] };
  }

  /** A new file goes to the second place soon after. */
  function keptFiles(): AttachmentFiles {
    const files = openAttachmentFiles(join(folderOf(purpose), 'attachments'));
    return {
      ...files,
      put(bytes) {
        const kept = files.put(bytes);
        secondPlace.carrySoon();
        return kept;
      },
    };
  }

  const bootId = readBootId();
  const services = (): CoreServices => ({
    appRoot: options.appRoot,
    dataFolder: folderOf(purpose),
    isDemo: () => purpose === 'demo',
    attachments: keptFiles(),
    backups: backupFolders[purpose],
    dailyCopies,
    rehearsal,
    secondPlace,
    steadyClockMs: options.steadyClockMs ?? (() => uptime() * 1000),
    bootId,
    signIn: (clientId, staffId) =>
      void (staffId === null ? signedIn.delete(clientId) : signedIn.set(clientId, staffId)),
    pinGuard,
    plans,
    exports,
    listWorks,
    switchStore,
    restoreFrom,
    changed,
    logFault,
  });

  async function handle(name: OperationName, input: unknown, clientId: ClientId): Promise<AnyReply> {
    const spec = contract[name];
    const actor = actorFor(clientId);
    const refused = refusal(spec.access, actor);
    if (refused !== null) return refused;
    if (!isPlainObject(input)) {
      return {
        ok: false,
        error: { code: 'bad-input', data: { issues: [{ path: '', message: 'a plain object is needed' }] } },
      };
    }
    const parsed = spec.input.safeParse(input);
    if (!parsed.success) {
      const issues = parsed.error.issues.map((issue) => ({
        path: issue.path.map(String).join('.'),
        message: issue.message,
      }));
      return { ok: false, error: { code: 'bad-input', data: { issues } } };
    }
    const now = clock();
    const context: HandlerContext = {
      store,
      db: store.db,
      actor,
      clientId,
      now,
      services: services(),
      write: (action) => store.write({ actorId: actor?.staffId ?? null, now }, action),
    };
    const handler = handlers[name] as (value: unknown, context: HandlerContext) => unknown;
    return { ok: true, value: spec.output.parse(await handler(parsed.data, context)) };
  }

  return {
    async call(name, input, clientId) {
      if (!isOperationName(name))
        return { ok: false, error: { code: 'unknown-operation', data: { name: String(name).slice(0, 100) } } };
      try {
        return await onceFree(() => handle(name, input, clientId));
      } catch (error) {
        return failureReply(name, error, logFault);
      }
    },

    async putFile(file, clientId): Promise<PutFileReply> {
      const actor = actorFor(clientId);
      if (actor === null) return { ok: false, code: 'not-signed-in' };
      if (file.bytes.length > fileLimitBytes) return { ok: false, code: 'too-large' };
      const mediaType = sniffMediaType(file.bytes, file.fileName);
      if (mediaType === null) return { ok: false, code: 'type-refused' };
      try {
        const { attachmentId, sha256 } = await onceFree(() =>
          keepFile(
            file,
            mediaType,
            services().attachments,
            (action) => store.write({ actorId: actor.staffId, now: clock() }, action),
            actor.staffId,
          ),
        );
        return { ok: true, attachmentId, sha256 };
      } catch (error) {
        if (storageFailureOf(error) === null) logFault(error);
        return { ok: false, code: 'not-saved' };
      }
    },

    async getFile(attachmentId, clientId): Promise<FileFound | null> {
      if (actorFor(clientId) === null) return null;
      const row = findAttachment(store.db, attachmentId);
      const bytes = row === undefined || row.erasedAt !== null ? null : services().attachments.get(row.sha256);
      return row === undefined || bytes === null ? null : { bytes, mediaType: row.mediaType, fileName: row.fileName };
    },

    onChanged(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },

    close() {
      dailyCopies.stop();
      rehearsal.stop();
      secondPlace.stop();
      endWhatRuns();
      store.close();
    },
  };
}

/** Copies of a store without the store: an empty one in its place would pass for a first run. */
function isGone(storeFile: string, backups: BackupFolder): boolean {
  return !existsSync(storeFile) && (backups.list().length > 0 || replacedStores(storeFile).length > 0);
}

/** Neither host can carry anything else; a Set or a Date would pass for an empty object. */
function isPlainObject(input: unknown): input is object {
  if (typeof input !== 'object' || input === null) return false;
  const prototype: unknown = Object.getPrototypeOf(input);
  return prototype === Object.prototype || prototype === null;
}

function refusal(access: (typeof contract)[OperationName]['access'], actor: Actor | null): AnyReply | null {
  if (access === 'public') return null;
  if (actor === null) return { ok: false, error: { code: 'not-signed-in', data: {} } };
  if (access === 'signed-in' || actor.roles.some((role) => (access as readonly StaffRole[]).includes(role)))
    return null;
  return { ok: false, error: { code: 'not-allowed', data: { needs: [...access] } } };
}

function failureReply(name: OperationName, error: unknown, logFault: FaultLog): AnyReply {
  if (error instanceof OperationFailure) {
    const shape =
      (contract[name].errors as Record<string, unknown>)[error.code] ??
      commonErrors[error.code as keyof typeof commonErrors];
    if (shape !== undefined) return { ok: false, error: { code: error.code, data: error.data } };
  }
  const why = storageFailureOf(error);
  if (why !== null) return { ok: false, error: { code: 'not-saved', data: { why } } };
  return { ok: false, error: { code: 'internal', data: { ref: logFault(error) } } };
}

/** Names this start of the machine where the system tells; elsewhere a restart shows only by the steady clock starting over. */
function readBootId(): string {
  const file = '/proc/sys/kernel/random/boot_id';
  return existsSync(file) ? readFileSync(file, 'utf8').trim() : 'unknown';
}
