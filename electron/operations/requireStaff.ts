/** For operations that name one of the firm's people. */
import type { ReadableDb } from '../../db/openStore.ts';
import { findStaff } from '../../db/people.ts';
import { notFound } from './handler.ts';

export function requireStaff(db: ReadableDb, staffId: string): void {
  if (findStaff(db, staffId) === undefined) notFound('staff', staffId);
}
