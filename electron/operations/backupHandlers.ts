/** Copies of the store, and its history by record. */
import { listOperations } from '../../db/history.ts';
import { findStaff } from '../../db/people.ts';
import { fail, type Handlers, notFound } from './handler.ts';

/** Never shown in a history. */
const SECRET_FIELDS = new Set(['pinHash']);

export const backupHandlers: Handlers<'backups.list' | 'backups.make' | 'backups.restore' | 'history.list'> = {
  /** Each copy is opened and checked once while the program runs, and again before it is put back. */
  'backups.list': (_input, context) => {
    const { backups } = context.services;
    return {
      folder: backups.folder,
      copies: backups.list().map((copy) => ({ ...copy, isVerified: backups.lastProblemOf(copy.name) === null })),
    };
  },

  'backups.make': (_input, context) => {
    const { dailyCopies } = context.services;
    try {
      return { ...dailyCopies.make(), isVerified: true };
    } catch (error) {
      context.services.logFault(error);
      return fail('copy-failed', { why: dailyCopies.failure()?.why ?? 'failed' });
    } finally {
      context.services.changed(['backups', 'app']);
    }
  },

  'backups.restore': (input, context) => {
    const { backups } = context.services;
    if (!backups.list().some((copy) => copy.name === input.name)) return notFound('backups', input.name);
    const why = backups.problemOf(input.name);
    if (why !== null) return fail('copy-damaged', { why });
    return { replacedKeptAs: context.services.restoreFrom(input.name) };
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
