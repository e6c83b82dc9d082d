/** The trade's words for the stored keys: fuels, emitters, building kinds, roles, visit kinds and states. */
import type { EmitterKind, FuelKey } from '../../domain/procedure/modelSheet.ts';
import type { PartyRole } from '../../domain/vocabulary/people.ts';
import type { Option } from '../form/SelectField.tsx';

export const FUEL_WORDS: Readonly<Record<FuelKey, string>> = {
  'natural-gas': 'natural gas',
  propane: 'propane (LP)',
  butane: 'butane (LP)',
  'heating-oil': 'heating oil',
};

export const EMITTER_WORDS: Readonly<Record<EmitterKind, string>> = {
  'floor-slab': 'floor heating in a slab',
  'floor-under-wood': 'floor heating under wood',
  'panel-radiators': 'panel radiators',
  'old-radiators': 'old or cast-iron radiators',
  'fin-tube-baseboard': 'fin-tube baseboard',
  'fan-coil': 'fan coil or air handler',
  'hot-water-cylinder': 'hot-water cylinder',
};

export const BUILDING_WORDS = {
  home: 'home, lived in by the owner',
  rental: 'rental',
  'new-build': 'new build',
  commercial: 'commercial',
} as const;

export const PARTY_ROLE_WORDS: Readonly<Record<PartyRole, string>> = {
  owner: 'owner',
  landlord: 'landlord',
  builder: 'builder',
  occupant: 'occupant',
  payer: 'payer',
  'key-holder': 'key holder',
  fitter: 'fitter',
  supplier: 'supplier',
};

export const JOB_KIND_WORDS = {
  startup: 'startup',
  service: 'annual service',
  repair: 'repair',
  'follow-up': 'follow-up',
} as const;

export const VISIT_STATE_WORDS = {
  pencilled: 'pencilled in',
  planned: 'planned',
  travelling: 'on the way',
  started: 'under way',
  finished: 'finished',
  signed: 'signed',
  cancelled: 'cancelled',
} as const;

export const OUTCOME_WORDS = {
  finished: 'finished',
  'return-needed': 'return needed',
  'site-not-ready': 'site was not ready',
  'made-safe': 'made safe',
} as const;

export const CREW_ROLE_WORDS = {
  lead: 'leads',
  licensed: 'licensed for the gas work',
  helper: 'helps',
} as const;

export const PHOTO_VIEW_WORDS = {
  'boiler-front': 'boiler, front',
  'vent-outside': 'vent outside',
  'gas-meter': 'gas meter',
} as const;

export const WASTED_TRIP_WORDS = {
  'no-gas': 'no gas, or meter not set',
  'no-power': 'no power',
  'vent-unfinished': 'vent not finished',
  'system-empty': 'system empty',
  'no-access': 'nobody opened',
  'wrong-equipment': 'wrong model, parts or kit',
  'controls-not-wired': 'thermostats not wired',
  'no-heat-load': 'no heat load',
  'permit-missing': 'permit missing',
  'licence-or-training': 'our licence or training not right',
  'instrument-not-in-date': 'our analyser not in date',
  other: 'something else',
} as const;

export function optionsOf<K extends string>(words: Readonly<Record<K, string>>): readonly Option<K>[] {
  return (Object.keys(words) as K[]).map((value) => ({ value, label: words[value] }));
}

/** The key of a list of words that a select gave back, or nothing. */
export function keyOf<K extends string>(words: Readonly<Record<K, string>>, text: string): K | null {
  return Object.hasOwn(words, text) ? (text as K) : null;
}
