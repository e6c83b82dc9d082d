/** Copies of the store, and its history by record. */
import type { BackupCopy } from '../../db/backups.ts';
import { listOperations } from '../../db/history.ts';
import { findStaff } from '../../db/people.ts';
import type { CoreServices } from './coreServices.ts';
import { fail, type Handlers, notFound } from './handler.ts';

function makeCopy({ dailyCopies, logFault, changed }: CoreServices) {
  try {
    return dailyCopies.make();
  } catch (error) {
    logFault(error);
    return fail('copy-failed', { why: dailyCopies.failure()?.why ?? 'failed' });
  } finally {
    changed(['backups', 'app']);
  }
}

/** Looked at only where the last try reached it: a share that is gone would hold everybody up. */
function listThere({ secondPlace, isDemo }: CoreServices): readonly BackupCopy[] {
  const state = secondPlace.state();
  if (isDemo() || state === null || state.trouble !== null || state.lastAt === null) return [];
  return secondPlace.copiesThere()?.list() ?? [];
}

/** Never shown in a history. */
const SECRET_FIELDS = new Set(['pinHash']);

export const backupHandlers: Handlers<
  | 'backups.list'
  | 'backups.make'
  | 'backups.chooseSecondPlace'
  | 'backups.carryOver'
  | 'backups.secondCopy'
  | 'backups.restore'
  | 'history.list'
> = {
  /** Each copy here is opened and checked once while the program runs; every one again before it is put back. */
  'backups.list': (_input, context) => {
    const { backups, rehearsal, secondPlace } = context.services;
    const there = new Set(listThere(context.services).map(({ name }) => name));
    const here = backups.list();
    const hereNames = new Set(here.map(({ name }) => name));
    const copies = [
      ...here.map((copy) => ({
        ...copy,
        isVerified: backups.lastProblemOf(copy.name) === null,
        where: there.has(copy.name) ? ('both' as const) : ('here' as const),
      })),
      ...listThere(context.services)
        .filter(({ name }) => !hereNames.has(name))
        .map((copy) => ({ ...copy, isVerified: false, where: 'second' as const })),
    ];
    return {
      folder: backups.folder,
      copies: copies.sort((a, b) => b.name.localeCompare(a.name)),
      lastTriedOut: context.services.isDemo() ? null : rehearsal.last(),
      secondPlace: context.services.isDemo() ? null : secondPlace.state(),
    };
  },

  'backups.make': (_input, context) => {
    const made = makeCopy(context.services);
    context.services.secondPlace.carrySoon();
    return { ...made, isVerified: true, where: 'here' };
  },

  'backups.chooseSecondPlace': (input, context) => {
    const { secondPlace } = context.services;
    if (context.services.isDemo()) return fail('in-demo', {});
    const why = secondPlace.choose(input.folder);
    if (why !== null) return fail('folder-refused', { folder: input.folder ?? '', why });
    secondPlace.carrySoon();
    context.services.changed(['backups', 'app']);
    return {};
  },

  'backups.carryOver': async (_input, context) => {
    const { secondPlace } = context.services;
    if (context.services.isDemo()) return fail('in-demo', {});
    makeCopy(context.services);
    await secondPlace.carry();
    return { secondPlace: secondPlace.state() };
  },

  'backups.secondCopy': (_input, { services }) => ({
    secondPlace: services.isDemo() ? null : services.secondPlace.state(),
  }),

  'backups.restore': (input, context) => {
    const { backups, secondPlace, isDemo } = context.services;
    const places = [backups, isDemo() ? null : secondPlace.copiesThere()];
    const place = places.find((one) => one?.list().some((copy) => copy.name === input.name));
    if (!place) return notFound('backups', input.name);
    const why = place.problemOf(input.name);
    if (why !== null) return fail('copy-damaged', { why });
    return { replacedKeptAs: context.services.restoreFrom(place.pathOf(input.name)) };
  },

  'history.list': (input, context) =>
    listOperations(context.db, input.entity, input.entityId).map((op) => ({
      at: new Date(Number(op.hlc.split('-')[0])).toISOString(),
      byName: op.actorId === null ? null : (findStaff(context.db, op.actorId)?.name ?? null),
      kind: op.kind,
      fields: Object.fromEntries(
        Object.entries(op.fields)
          .filter(([name]) => !SECRET_FIELDS.has(name))
          .map(([name, field]) => [name, field.value]),
      ),
    })),
};
