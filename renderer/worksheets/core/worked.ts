/**
 * A number that is known, or every reason why it is not. Whatever is worked out from it inherits the reasons, so that a
 * missing input is named at each result that needs it and is never taken for zero.
 */
import type { NoAltitudeRule } from '../../../domain/gas/altitudeRule.ts';
import type { TransitionalFlow } from '../../../domain/hydronics/pipes/frictionFactor.ts';
import { err, type OutOfRange, type Result } from '../../../domain/result.ts';

export type Refusal =
  | OutOfRange
  | NoAltitudeRule
  | TransitionalFlow
  | { readonly code: 'said'; readonly words: string };

export type Why =
  | { readonly code: 'missing'; readonly label: string }
  | { readonly code: 'unreadable'; readonly label: string }
  | Refusal;

export type Worked<T> = Result<T, readonly Why[]>;

type ValuesOf<I> = { readonly [K in keyof I]: I[K] extends Worked<infer T> ? T : never };

/** Works something out once all it needs is known. */
export function work<const I extends Readonly<Record<string, Worked<unknown>>>, T>(
  needs: I,
  how: (values: ValuesOf<I>) => Result<T, Refusal>,
): Worked<T> {
  const whys = Object.values(needs).flatMap((need) => (need.ok ? [] : need.error));
  if (whys.length > 0) return err(whys);
  const values = Object.fromEntries(
    Object.entries(needs).flatMap(([key, need]) => (need.ok ? [[key, need.value]] : [])),
  );
  // Every need was found known just above.
  const result = how(values as ValuesOf<I>);
  return result.ok ? result : err([result.error]);
}

/** The first that is typed: one with nothing in it makes way for the next. */
export function firstTyped<T>(wanted: string, ...options: readonly Worked<T>[]): Worked<T> {
  const typed = options.find((option) => option.ok || option.error.some(({ code }) => code !== 'missing'));
  return typed ?? err([{ code: 'missing', label: wanted }]);
}

/** What a person would say when there is no number, in a formula's own words. */
export function said(words: string): Result<never, Refusal> {
  return err({ code: 'said', words });
}

export function isTyped(worked: Worked<unknown>): boolean {
  return worked.ok || worked.error.some(({ code }) => code !== 'missing');
}
