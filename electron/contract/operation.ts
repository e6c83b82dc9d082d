/**
 * What an operation is: its input, its output, its declared failures and who may ask for it. `call` never throws: it
 * answers a value or one of the declared failures, or one that any operation may have.
 */
import { z } from 'zod';
import { STAFF_ROLES, type StaffRole } from '../../domain/vocabulary/people.ts';

/** `public`: before anybody has signed in. `signed-in`: anybody of the firm. Otherwise one of the roles. */
export type Access = 'public' | 'signed-in' | readonly StaffRole[];

type ErrorShapes = Readonly<Record<string, z.ZodType>>;

export type OperationSpec = {
  readonly access: Access;
  readonly input: z.ZodType;
  readonly output: z.ZodType;
  readonly errors: ErrorShapes;
};

export function operation<
  I extends z.ZodType,
  O extends z.ZodType,
  E extends ErrorShapes = Record<never, never>,
>(spec: {
  readonly access: Access;
  readonly input: I;
  readonly output: O;
  readonly errors?: E;
}): { readonly access: Access; readonly input: I; readonly output: O; readonly errors: E } {
  return { errors: {} as E, ...spec };
}

/** Why the disk or the store did not take something. */
export const storageFailure = z.enum(['disk-full', 'read-only', 'locked', 'damaged', 'failed']);

/** Why the store cannot be opened, where going back to a copy helps. */
export const storeTrouble = z.enum(['damaged', 'missing']);

/** Failures that any operation may answer with. */
export const commonErrors = {
  'bad-input': z.strictObject({ issues: z.array(z.strictObject({ path: z.string(), message: z.string() })) }),
  'unknown-operation': z.strictObject({ name: z.string() }),
  'not-signed-in': z.strictObject({}),
  'not-allowed': z.strictObject({ needs: z.array(z.enum(STAFF_ROLES)) }),
  'not-found': z.strictObject({ entity: z.string(), id: z.string() }),
  /** The store did not take it; nothing was written. */
  'not-saved': z.strictObject({ why: storageFailure }),
  /** The store could not be opened: only `rescue.*` answers. */
  'store-closed': z.strictObject({ trouble: storeTrouble }),
  /** A bug: the details are in the log under this reference. */
  internal: z.strictObject({ ref: z.string() }),
  /** The core could not be reached. */
  offline: z.strictObject({}),
} as const;

type DataOf<E extends ErrorShapes> = {
  [C in keyof E & string]: { readonly code: C; readonly data: z.output<E[C]> };
}[keyof E & string];
export type CommonError = DataOf<typeof commonErrors>;
export type ErrorOf<S extends OperationSpec> = DataOf<S['errors']> | CommonError;

export type Reply<V, E> = { readonly ok: true; readonly value: V } | { readonly ok: false; readonly error: E };
export type AnyReply = Reply<unknown, { readonly code: string; readonly data: unknown }>;

/** Ids are made on the device (UUID version 7). */
export const id = z.uuid();
export const day = z.iso.date();
export const instant = z.iso.datetime();
export const nothing = z.strictObject({});
/** What a person types in one line; never empty. */
export const line = z.string().trim().min(1).max(300);
export const optionalLine = z.string().trim().max(300).nullable();
export const words = z.string().trim().max(4000).nullable();

/** Lists come a page at a time; `after` is the last row's id of the page before. */
export const page = {
  query: z.string().max(200).default(''),
  limit: z.number().int().min(1).max(200).default(50),
  after: id.nullable().default(null),
};

/** A value of the domain's own, in or out as it is: no client makes one up. */
export function domainValue<T>() {
  return z.custom<T>((value) => typeof value === 'object' && value !== null);
}
