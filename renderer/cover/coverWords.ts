/** The state of a term and its reasons in short words: what is on record, what is open, what is missing. Never a promise. */
import type { CoverPart, CoverState, CoverTerm } from '../../domain/coverage/applianceCover.ts';
import type { CoverReason } from '../../domain/coverage/coverReasons.ts';
import type { CoverRevisionReason } from '../../domain/coverage/coverRevision.ts';
import { assertNever } from '../../domain/result.ts';
import { dayWords } from '../kit/dayWords.ts';

export const PART_WORDS: Readonly<Record<CoverPart, string>> = {
  exchanger: 'Heat exchanger',
  parts: 'Parts',
  labour: 'Labour',
};

export const COVER_STATE_WORDS: Readonly<Record<CoverState, string>> = {
  evidenced: 'evidenced',
  'at-risk': 'at risk',
  'not-evidenced': 'not evidenced',
  'past-its-date': 'past its date',
};

export const COVER_STATE_TONES: Readonly<Record<CoverState, 'good' | 'doubt' | 'bad' | 'plain'>> = {
  evidenced: 'good',
  'at-risk': 'doubt',
  'not-evidenced': 'bad',
  'past-its-date': 'plain',
};

export const LENGTH_WORDS: Readonly<Record<CoverTerm['length'], string>> = {
  registered: 'the length for registered appliances',
  unregistered: 'the length without registration',
  same: 'one length, registered or not',
  'other-use': 'the length for other use',
};

const REVISION_WORDS: Readonly<Record<CoverRevisionReason, string>> = {
  'started-with': 'the one it was started up with',
  'in-force': 'the newest there was when it was put in',
  oldest: 'the oldest on file; all are later than the boiler',
  newest: 'the newest; no day of the boiler is known',
};

/** A later revision is for later boilers. */
export function termsWords(sheet: {
  readonly title: string;
  readonly revision: string;
  readonly reason: CoverRevisionReason;
}): string {
  return `${sheet.title}, rev. ${sheet.revision}: ${REVISION_WORDS[sheet.reason]}.`;
}

export const LATEST_WORDS = {
  registration: 'register',
  service: 'service',
  transfer: 'tell the maker of the new owner',
} as const;

export function reasonWords(reason: CoverReason): string {
  switch (reason.code) {
    case 'registered':
      return `Registration confirmed on ${dayWords(reason.on)}`;
    case 'registration-open':
      return `To be registered by ${dayWords(reason.latestOn, { weekday: true })}`;
    case 'registration-unconfirmed':
      return `Submitted on ${dayWords(reason.on)}; the maker’s confirmation is missing`;
    case 'registration-late':
      return `Submitted on ${dayWords(reason.on)}, after the last day ${dayWords(reason.latestOn)}; not confirmed`;
    case 'registration-missed':
      return `Not registered by ${dayWords(reason.latestOn)}. Submit it anyway and keep the proof`;
    case 'registration-no-date':
      return 'Not registered, and no date is known that the window runs from';
    case 'services-done':
      return reason.count === 1 ? '1 service in time' : `${reason.count} services in time`;
    case 'service-open':
      return `Service ${reason.nth} due ${dayWords(reason.dueOn)}, latest ${dayWords(reason.latestOn, { weekday: true })}`;
    case 'service-late':
      return `Service ${reason.nth} done on ${dayWords(reason.on)}, after ${dayWords(reason.latestOn)}`;
    case 'service-missed':
      return `No record of service ${reason.nth}, latest day ${dayWords(reason.latestOn)}`;
    case 'service-no-date':
      return 'No date is known that services count from';
    case 'water-quality-recorded':
      return 'Water quality is on record';
    case 'water-quality-missing':
      return 'No water reading on record';
    case 'installer-licensed':
      return 'Sealed by somebody licensed on the day';
    case 'installer-licence-missing':
      return 'No sealed startup by somebody with a licence on that day';
    case 'use-as-stated':
      return 'Used as the sheet states';
    case 'use-unknown':
      return 'How the building is used is not known';
    case 'use-differs':
      return reason.isLengthStated
        ? 'Used otherwise: the sheet’s own length for that was taken'
        : 'Used otherwise than the sheet states';
    case 'owner-changed':
      return `New owner since ${dayWords(reason.on)}; the sheet’s terms are for the first one`;
    case 'transfer-told':
      return `New owner since ${dayWords(reason.on)}, told in time`;
    case 'transfer-open':
      return `New owner since ${dayWords(reason.on)}: tell the maker by ${dayWords(reason.latestOn, { weekday: true })}`;
    case 'transfer-late':
      return `New owner since ${dayWords(reason.on)}, told after ${dayWords(reason.latestOn)}`;
    case 'transfer-missed':
      return `New owner since ${dayWords(reason.on)}; no notice to the maker by ${dayWords(reason.latestOn)}`;
    default:
      return assertNever(reason);
  }
}
