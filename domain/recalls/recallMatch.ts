/** Whether a notice is about an appliance: by maker, model, serial range and altitude, and where that can't be told. */
import { type SerialRange, serialInRange } from './serialRange.ts';

export type RecallRule = {
  readonly maker: string;
  /** Empty: every model of the maker. */
  readonly models: readonly string[];
  /** Empty: every serial. */
  readonly serialRanges: readonly SerialRange[];
  readonly altitudeMinM: number | null;
  readonly altitudeMaxM: number | null;
};

export type RecallSubject = {
  readonly maker: string;
  readonly model: string;
  /** Empty where it was never read. */
  readonly serial: string;
  /** null: not known. */
  readonly altitudeM: number | null;
};

export const RECALL_DOUBTS = [
  'serial-missing',
  'serial-look-alike',
  'serial-without-number',
  'altitude-missing',
] as const;
export type RecallDoubt = (typeof RECALL_DOUBTS)[number];

/** null: it is about others. Doubts: everything known fits, the rest has to be looked at there. */
export function recallMatch(
  rule: RecallRule,
  appliance: RecallSubject,
): { readonly doubts: readonly RecallDoubt[] } | null {
  if (plainName(appliance.maker) !== plainName(rule.maker)) return null;
  if (rule.models.length > 0 && !rule.models.some((model) => plainName(model) === plainName(appliance.model)))
    return null;
  const serial = serialDoubt(rule.serialRanges, appliance.serial);
  const altitude = altitudeDoubt(rule, appliance.altitudeM);
  if (serial === 'outside' || altitude === 'outside') return null;
  return { doubts: [serial, altitude].filter((doubt) => doubt !== null) };
}

/** Makers and models are typed in many ways: letters and digits alone are compared. */
export function plainName(name: string): string {
  return name.toUpperCase().replaceAll(/[^\p{L}\p{N}]/gu, '');
}

function serialDoubt(ranges: readonly SerialRange[], serial: string): RecallDoubt | 'outside' | null {
  if (ranges.length === 0) return null;
  if (plainName(serial) === '') return 'serial-missing';
  const found = new Set(ranges.map((range) => serialInRange(serial, range)));
  if (found.has('inside')) return null;
  if (found.has('look-alike')) return 'serial-look-alike';
  return found.has('no-number') ? 'serial-without-number' : 'outside';
}

function altitudeDoubt(rule: RecallRule, altitudeM: number | null): RecallDoubt | 'outside' | null {
  const { altitudeMinM: from, altitudeMaxM: to } = rule;
  if (from === null && to === null) return null;
  if (altitudeM === null) return 'altitude-missing';
  return (from !== null && altitudeM < from) || (to !== null && altitudeM > to) ? 'outside' : null;
}
