/**
 * Whether what is written of a make-safe's end can tell the next person why it may run again: what was found, what was put
 * right, how it was checked. No program can judge that; one that is shorter than a few words says none of it.
 */
const FEWEST_WORDS = 3;

export function isTellingReason(reason: string): boolean {
  return reason.split(/\s+/).filter((word) => /\p{L}{2}/u.test(word)).length >= FEWEST_WORDS;
}
