/** Why a reading is not proven, and what would prove it. */
import type { NotProvenReason } from '../../../domain/judgement/finding.ts';
import { assertNever } from '../../../domain/result.ts';

export function proofWords(reason: NotProvenReason): string {
  switch (reason) {
    case 'not-steady':
      return 'not steady yet: take another sample';
    case 'too-few-samples':
      return 'one more sample needed';
    case 'before-settled':
      return 'read before the settling time was over: read again';
    case 'tuning-not-finished':
      return 'read before the tuning run was finished';
    case 'instrument-out-of-date':
      return 'the instrument’s calibration is out of date';
    case 'instrument-not-zeroed':
      return 'the analyser was not checked in clean air';
    case 'wrong-instrument':
      return 'not an instrument for this: read it with the right one';
    case 'instrument-not-calibrated':
      return 'the instrument had no calibration on that day';
    case 'instrument-unknown':
      return 'no instrument named';
    case 'water-side-not-at-zero':
      return 'the vessel’s water side was not at zero';
    case 'hold-lapsed':
      return 'too long ago: read again';
    case 'clock-jumped':
      return 'the laptop’s clock moved meanwhile: run the wait again';
    case 'from-paper':
      return 'copied from paper: the app did not see it';
    case 'over-range':
      return 'the instrument was over its range';
    default:
      return assertNever(reason);
  }
}
