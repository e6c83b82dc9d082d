/** What every handler gets, and how it says that something cannot be done: declared failures leave as values, bugs as exceptions. */
import type { ReadableDb, Store } from '../../db/openStore.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import type { StaffRole } from '../../domain/vocabulary/people.ts';
import type { ErrorsOf, OperationName, OutputOf, ParsedInputOf } from '../contract/index.ts';
import type { ClientId } from '../core.ts';
import type { CoreServices } from './coreServices.ts';

export type Actor = { readonly staffId: string; readonly name: string; readonly roles: readonly StaffRole[] };

export type HandlerContext = {
  readonly store: Store;
  readonly db: ReadableDb;
  /** null only in public operations. */
  readonly actor: Actor | null;
  readonly clientId: ClientId;
  /** The instant of this call. */
  readonly now: string;
  readonly services: CoreServices;
  /** One transaction in the actor's name. */
  readonly write: <T>(action: (writer: StoreWriter) => T) => T;
};

/** For reading only: what a demo has too while it is made. */
export type ReadContext = Pick<HandlerContext, 'store' | 'db' | 'now'>;

export type Handlers<N extends OperationName> = {
  readonly [K in N]: (input: ParsedInputOf<K>, context: HandlerContext) => OutputOf<K> | Promise<OutputOf<K>>;
};

type AnyError = ErrorsOf<OperationName>;
export type ErrorCode = AnyError['code'];
export type ErrorData<C extends ErrorCode> = Extract<AnyError, { readonly code: C }>['data'];

export class OperationFailure extends Error {
  readonly code: string;
  readonly data: unknown;
  constructor(code: string, data: unknown) {
    super(code);
    this.code = code;
    this.data = data;
  }
}

/** Leaves the handler, and any transaction it is in, with a declared failure. */
export function fail<C extends ErrorCode>(code: C, data: ErrorData<C>): never {
  throw new OperationFailure(code, data);
}

export function notFound(entity: string, id: string): never {
  return fail('not-found', { entity, id });
}

/** The person acting; the door lets nobody in without one where it matters. */
export function actorOf(context: HandlerContext): Actor {
  if (context.actor === null) return fail('not-signed-in', {});
  return context.actor;
}
