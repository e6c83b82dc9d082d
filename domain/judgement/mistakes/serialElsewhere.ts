/** The same serial of the same maker somewhere else, or one that only looks the same. */
import { serialKeyOf } from '../../text/serialKey.ts';

export type KnownSerial = {
  readonly applianceId: string;
  readonly siteId: string;
  readonly maker: string;
  readonly serial: string;
};

export type SerialProblem = {
  /** `serial-elsewhere`: one serial twice; registration waits. `serial-confusable`: two that can be read for one another. */
  readonly code: 'serial-elsewhere' | 'serial-confusable';
  readonly otherApplianceId: string;
  readonly otherSerial: string;
  /** Two of a pair on one site: the plates may have been typed in each other's place. */
  readonly isOnSameSite: boolean;
};

export function serialElsewhere(one: KnownSerial, known: readonly KnownSerial[]): readonly SerialProblem[] {
  const key = serialKeyOf(one.serial);
  if (key === '') return [];
  return known
    .filter(
      (other) =>
        other.applianceId !== one.applianceId &&
        plain(other.maker) === plain(one.maker) &&
        serialKeyOf(other.serial) === key,
    )
    .map((other) => ({
      code: plain(other.serial) === plain(one.serial) ? 'serial-elsewhere' : 'serial-confusable',
      otherApplianceId: other.applianceId,
      otherSerial: other.serial,
      isOnSameSite: other.siteId === one.siteId,
    }));
}

function plain(text: string): string {
  return text.toUpperCase().replaceAll(/[^\p{L}\p{N}]/gu, '');
}
