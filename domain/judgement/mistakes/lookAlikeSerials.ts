/** Serials that look the same on a plate and fit the maker's pattern, for one that does not. */
import { serialKeyOf } from '../../text/serialKey.ts';

const ALPHABET = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789'];
/** More doubtful places than this and the list would help nobody. */
const MOST_TRIED = 4096;

export function lookAlikeSerials(serial: string, fits: (candidate: string) => boolean): readonly string[] {
  const plain = serial.toUpperCase().replaceAll(/[^A-Z0-9]/g, '');
  let candidates: readonly string[] = [''];
  for (const letter of plain) {
    const same = ALPHABET.filter((one) => serialKeyOf(one) === serialKeyOf(letter));
    candidates = candidates.flatMap((start) => same.map((one) => start + one));
    if (candidates.length > MOST_TRIED) return [];
  }
  // As few exchanged characters as possible first.
  return candidates
    .filter((candidate) => candidate !== plain && fits(candidate))
    .toSorted((one, other) => differences(one, plain) - differences(other, plain));
}

function differences(one: string, other: string): number {
  return [...one].filter((letter, at) => letter !== other[at]).length;
}
