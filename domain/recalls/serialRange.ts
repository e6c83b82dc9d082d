/**
 * Whether a serial number lies in a range a notice names, both ends included. Compared is the numeric part, the last run of
 * digits: `AB-0100` to `AB-0999` holds `AB 500`. What stands around it must be the same as at the ends; ends of digits alone
 * hold every serial whose number lies between, whatever letters stand around it. Spaces, hyphens and case do not count.
 * Common practice, no source: a notice that counts otherwise has to be gone through by hand.
 */
import { err, ok, type Result } from '../result.ts';
import { serialKeyOf } from '../text/serialKey.ts';

export type SerialRange = { readonly from: string; readonly to: string };

export type RangeProblem = {
  /** `no-number`: an end without digits. `not-comparable`: other letters at one end than at the other. */
  readonly code: 'no-number' | 'not-comparable' | 'reversed';
};

export type InRange =
  | 'inside'
  | 'outside'
  /** Only when characters that are read for one another are exchanged: look at the plate. */
  | 'look-alike'
  /** Without digits, or none at all. */
  | 'no-number';

export function checkSerialRange(range: SerialRange): Result<SerialRange, RangeProblem> {
  const from = partsOf(range.from);
  const to = partsOf(range.to);
  if (from === null || to === null) return err({ code: 'no-number' });
  if (from.before !== to.before || from.after !== to.after) return err({ code: 'not-comparable' });
  return from.number > to.number ? err({ code: 'reversed' }) : ok(range);
}

export function serialInRange(serial: string, range: SerialRange): InRange {
  const from = partsOf(range.from);
  const to = partsOf(range.to);
  if (from === null || to === null) return 'outside';
  const own = partsOf(serial);
  if (own !== null && hasSameFrame(own, from) && isBetween(own.number, from, to)) return 'inside';
  if (isLookAlike(plain(serial), from, to)) return 'look-alike';
  return own === null ? 'no-number' : 'outside';
}

type Parts = { readonly before: string; readonly number: bigint; readonly after: string };

function partsOf(serial: string): Parts | null {
  const match = /^(.*?)(\d+)([^\d]*)$/u.exec(plain(serial));
  if (match === null) return null;
  const [, before = '', digits = '', after = ''] = match;
  return { before, number: BigInt(digits), after };
}

function hasSameFrame(own: Parts, end: Parts): boolean {
  const isBare = end.before === '' && end.after === '';
  return isBare || (own.before === end.before && own.after === end.after);
}

function isBetween(number: bigint, from: Parts, to: Parts): boolean {
  return number >= from.number && number <= to.number;
}

/** With O for 0, I for 1 and so on made equal, on both sides alike. */
function isLookAlike(serial: string, from: Parts, to: Parts): boolean {
  if (from.before === '' && from.after === '') return isLookAlikeNumber(serial, from, to);
  const key = serialKeyOf(serial);
  const before = serialKeyOf(from.before);
  const after = serialKeyOf(from.after);
  if (!key.startsWith(before) || !key.endsWith(after) || key.length <= before.length + after.length) return false;
  const middle = key.slice(before.length, key.length - after.length);
  return /^\d+$/u.test(middle) && isBetween(BigInt(middle), from, to);
}

/** Ends of digits alone say nothing of what stands in front: a number may begin after any letter. */
function isLookAlikeNumber(serial: string, from: Parts, to: Parts): boolean {
  return Array.from(serial).some((_sign, start) => {
    if (start > 0 && /\d/u.test(serial.charAt(start - 1))) return false;
    const digits = /^(\d+)\D*$/u.exec(serialKeyOf(serial.slice(start)))?.[1];
    const isAsTyped = /^\d+$/u.test(serial.slice(start, start + (digits?.length ?? 0)));
    return digits !== undefined && !isAsTyped && isBetween(BigInt(digits), from, to);
  });
}

function plain(serial: string): string {
  return serial.toUpperCase().replaceAll(/[^\p{L}\p{N}]/gu, '');
}
