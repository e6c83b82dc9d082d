/** Who is involved and how they are reached: the words the store keeps and the contract takes. */
export const UNIT_SYSTEMS = ['metric', 'us'] as const;
export const LANGUAGES = ['en', 'fr', 'es'] as const;

export const STAFF_ROLES = ['dispatcher', 'technician', 'helper', 'owner'] as const;
export type StaffRole = (typeof STAFF_ROLES)[number];

export const PARTY_ROLES = [
  'owner',
  'landlord',
  'builder',
  'occupant',
  'payer',
  'key-holder',
  'fitter',
  'supplier',
] as const;
export type PartyRole = (typeof PARTY_ROLES)[number];

export const CHANNELS = ['e-mail', 'text', 'phone', 'letter'] as const;
export type Channel = (typeof CHANNELS)[number];

/** What consent is given for, each on its own. */
export const PURPOSES = ['appointments', 'service-due', 'registration', 'offers', 'safety'] as const;
export type Purpose = (typeof PURPOSES)[number];

export const INSTRUMENT_KINDS = [
  'analyser',
  'manometer',
  'thermometer',
  'water-test',
  'stopwatch',
  'multimeter',
  'other',
] as const;
export type InstrumentKind = (typeof INSTRUMENT_KINDS)[number];

/** What speaks against erasing a person. */
export const PERSON_HOLDS = [
  /** Somebody may still be in danger there. */
  'make-safe-open',
  /** Without an owner on file a maker may refuse a claim. */
  'cover-may-run',
  'claim-open',
  'registration-open',
  'agreement-runs',
  'visit-ahead',
  'record-not-sealed',
] as const;
export type PersonHold = (typeof PERSON_HOLDS)[number];
