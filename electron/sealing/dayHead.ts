/**
 * The head of a day: one fingerprint over everything that was sealed on it and the head closed before. A chain per visit shows
 * what was changed in a visit; that a whole visit is gone, or was put in later, shows only here.
 */
import { canonicalJson, sealHash } from './canonicalJson.ts';

export type SealOfDay = { readonly visitId: string; readonly sequence: number; readonly sha256: string };

/** `seals` in the order in which they were made. `previousSha256`: of the head closed before; null: this is the first. */
export function dayHead(day: string, seals: readonly SealOfDay[], previousSha256: string | null): string {
  return sealHash(
    canonicalJson({
      schema: 'lightoff.day/1',
      day,
      previousSha256,
      seals: seals.map(({ visitId, sequence, sha256 }) => ({ visitId, sequence: String(sequence), sha256 })),
    }),
  );
}

export type ClosedDay = { readonly day: string; readonly sealCount: number; readonly sha256: string };

/**
 * The days whose heads do not come out any more, each once: a sealed record of theirs is gone, was altered or came in later, or
 * the head itself was altered. A day is closed again where something was sealed on it with the clock set back; the last head
 * counts all of it.
 */
export function brokenDays(
  heads: readonly ClosedDay[],
  sealsOf: (day: string) => readonly SealOfDay[],
): readonly string[] {
  const broken = new Set<string>();
  const last = new Map<string, number>();
  let previousSha256: string | null = null;
  for (const { day, sealCount, sha256 } of heads) {
    const seals = sealsOf(day);
    if (seals.length < sealCount || dayHead(day, seals.slice(0, sealCount), previousSha256) !== sha256) broken.add(day);
    last.set(day, sealCount);
    previousSha256 = sha256;
  }
  for (const [day, sealCount] of last) if (sealsOf(day).length !== sealCount) broken.add(day);
  return [...broken];
}
