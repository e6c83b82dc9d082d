/** Jobs, visits and what comes of them: the words the store keeps and the contract takes. */
export const JOB_KINDS = ['startup', 'service', 'repair', 'follow-up'] as const;
export const VISIT_STATES = [
  'pencilled',
  'planned',
  'travelling',
  'started',
  'finished',
  'signed',
  'cancelled',
] as const;
export const VISIT_OUTCOMES = ['finished', 'return-needed', 'site-not-ready', 'made-safe'] as const;
export const CREW_ROLES = ['lead', 'licensed', 'helper'] as const;
export const READING_ORIGINS = ['typed', 'suggestion', 'transcribed', 'imported'] as const;
export const REGISTRATION_STATES = ['recording', 'ready', 'submitted', 'confirmed'] as const;
export const FIRST_YEAR_KINDS = ['first-call', 'look-in'] as const;

/** What is asked for before a startup. */
export const PHOTO_VIEWS = ['boiler-front', 'vent-outside', 'gas-meter'] as const;

/** Why a trip could not do its work, so that it can be counted. */
export const WASTED_TRIP_CODES = [
  'no-gas',
  'no-power',
  'vent-unfinished',
  'system-empty',
  'no-access',
  'wrong-equipment',
  'controls-not-wired',
  'no-heat-load',
  'permit-missing',
  'licence-or-training',
  'instrument-not-in-date',
  'other',
] as const;

/** What may be under way with a list of an earlier program. */
export const LIST_WORK_KINDS = ['take-in', 'take-out'] as const;
