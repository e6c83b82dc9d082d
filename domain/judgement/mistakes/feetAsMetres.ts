/** An altitude in feet stored as metres, or metres as feet, seen against the neighbours' altitudes. */
import { METRES_PER_FOOT } from '../../quantity/conversions.ts';

export type AltitudeProblem = {
  readonly code: 'feet-as-metres';
  /** `feet`: the number was feet; `metres`: it was metres and taken for feet. */
  readonly meant: 'feet' | 'metres';
  readonly meantM: number;
  readonly neighbourM: number;
};

/** Places with one postcode differ by hills, hardly by this much and this share at once. */
const FAR_OFF_M = 150;
const FAR_OFF_SHARE = 0.5;
/** What it was meant to be has to come much closer than what is stored. */
const CLOSER_BY = 3;

/** `neighbourAltitudesM`: other jobs of the same postcode or town. Without any, nothing can be said. */
export function feetAsMetres(input: {
  readonly altitudeM: number;
  readonly neighbourAltitudesM: readonly number[];
}): AltitudeProblem | null {
  const { altitudeM } = input;
  const neighbourM = median(input.neighbourAltitudesM);
  if (neighbourM === null) return null;
  const off = Math.abs(altitudeM - neighbourM);
  if (off < FAR_OFF_M || off < Math.abs(neighbourM) * FAR_OFF_SHARE) return null;
  const [best] = [
    { meant: 'feet' as const, meantM: altitudeM * METRES_PER_FOOT },
    { meant: 'metres' as const, meantM: altitudeM / METRES_PER_FOOT },
  ].toSorted((one, other) => Math.abs(one.meantM - neighbourM) - Math.abs(other.meantM - neighbourM));
  if (best === undefined || Math.abs(best.meantM - neighbourM) * CLOSER_BY > off) return null;
  return { code: 'feet-as-metres', ...best, neighbourM };
}

function median(values: readonly number[]): number | null {
  const sorted = values.filter(Number.isFinite).toSorted((one, other) => one - other);
  return sorted[Math.floor(sorted.length / 2)] ?? null;
}
