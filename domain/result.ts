/** The outcome of a calculation or check that may legitimately have no answer: expected failure is a value, a bug is an exception. */

export type Ok<T> = { readonly ok: true; readonly value: T };
export type Err<E> = { readonly ok: false; readonly error: E };
export type Result<T, E> = Ok<T> | Err<E>;

export function ok<T>(value: T): Ok<T> {
  return { ok: true, value };
}

export function err<E>(error: E): Err<E> {
  return { ok: false, error };
}

/** An input outside the range in which a formula holds: the answer is "can't judge", never a number. */
export type OutOfRange = {
  readonly code: 'out-of-range';
  readonly quantity: string;
  readonly value: number;
  readonly validMin: number | null;
  readonly validMax: number | null;
};

/** Refuses NaN too: a comparison with NaN is false. */
export function checkRange(
  quantity: string,
  value: number,
  validMin: number | null,
  validMax: number | null,
): OutOfRange | null {
  const isAboveMin = validMin === null ? Number.isFinite(value) : value >= validMin;
  const isBelowMax = validMax === null ? Number.isFinite(value) : value <= validMax;
  return isAboveMin && isBelowMax ? null : { code: 'out-of-range', quantity, value, validMin, validMax };
}

/** The value of a result that cannot fail here; throws when that belief is wrong. */
export function unwrap<T, E>(result: Result<T, E>): T {
  if (result.ok) return result.value;
  throw new Error(`unexpected failure: ${JSON.stringify(result.error)}`);
}

export function assertNever(value: never): never {
  throw new Error(`unexpected case: ${JSON.stringify(value)}`);
}
