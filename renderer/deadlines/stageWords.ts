/** Where a registration is on its way to the maker, how loudly its last day calls, and how sure a date is: in words. */
import type { DeadlineAlarm } from '../../domain/coverage/deadlineAlarm.ts';
import type { Sureness } from '../../domain/service/serviceRule.ts';
import type { DEADLINE_FILTERS, DeadlineRow } from '../../electron/contract/dues.ts';

export const STAGE_WORDS: Readonly<Record<DeadlineRow['stage'], string>> = {
  'not-begun': 'startup not begun',
  recording: 'not complete yet',
  ready: 'ready to submit',
  submitted: 'submitted, not confirmed',
  confirmed: 'confirmed by the maker',
};

export const FILTER_WORDS: Readonly<Record<(typeof DEADLINE_FILTERS)[number], string>> = {
  'to-submit': 'everything to submit',
  pressing: 'pressing: half the time over, or more',
  late: 'late',
  open: 'everything open, submitted ones too',
  ...STAGE_WORDS,
};

export const ALARM_WORDS: Readonly<Record<DeadlineAlarm, string>> = {
  none: '',
  half: 'half the time is over',
  'days-14': '',
  'days-7': 'last week',
  'days-3': 'last three days',
  'days-1': 'last day',
  late: 'submit it anyway and keep the proof',
};

export const ALARM_TONES: Readonly<Record<DeadlineAlarm, 'plain' | 'doubt' | 'bad' | 'stop'>> = {
  none: 'plain',
  half: 'doubt',
  'days-14': 'doubt',
  'days-7': 'bad',
  'days-3': 'bad',
  'days-1': 'bad',
  late: 'stop',
};

export const SURENESS_WORDS: Readonly<Record<Sureness, string>> = {
  'maker-sheet': 'by the maker’s sheet',
  'date-assumed': 'counted from another or a rough date',
  'general-rule': 'by the general rule, once a year',
  agreement: 'by the service agreement',
};
