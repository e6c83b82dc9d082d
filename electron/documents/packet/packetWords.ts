/** The packet's words for codes. A condition is "the maker's stated condition", and evidenced or not: what that means is for the maker. */
import type { Verdict } from '../../../domain/judgement/finding.ts';
import type { CoverDate, EmitterKind, FuelKey } from '../../../domain/procedure/modelSheet.ts';
import { COPIED_ANSWER } from '../../../domain/procedure/progress/listProgress.ts';
import { asWords, quantityLabel } from './quantityText.ts';

export const VERDICT_WORDS: Record<Verdict, string> = {
  within: 'Within',
  'near-the-edge': 'Near the edge',
  outside: 'Outside',
  stop: 'Stop',
  'no-limit-on-sheet': 'No limit on sheet',
  'cannot-tell-apart': 'Can’t tell apart from the limit',
  'cannot-judge': 'Can’t judge',
};

const NOT_PROVEN: Readonly<Record<string, string>> = {
  'not-steady': 'not steady',
  'too-few-samples': 'too few samples',
  'before-settled': 'read before it had settled',
  'tuning-not-finished': 'burner calibration not finished',
  'instrument-out-of-date': 'instrument out of date',
  'instrument-not-zeroed': 'instrument not zeroed',
  'wrong-instrument': 'not an instrument for this',
  'instrument-not-calibrated': 'instrument without calibration on that day',
  'instrument-unknown': 'instrument not named',
  'water-side-not-at-zero': 'water side not at zero',
  'hold-lapsed': 'wait has lapsed',
  'clock-jumped': 'clock was moved',
  'from-paper': 'copied from paper',
  'over-range': 'over the instrument’s range',
};

export function proofText(proof: { readonly proven: boolean; readonly because: readonly string[] }): string {
  if (proof.proven) return 'proven';
  return `not proven: ${proof.because.map((code) => NOT_PROVEN[code] ?? asWords(code).toLowerCase()).join(', ')}`;
}

export const FUEL_WORDS: Record<FuelKey, string> = {
  'natural-gas': 'Natural gas',
  propane: 'Propane (LP)',
  butane: 'Butane (LP)',
  'heating-oil': 'Heating oil',
};

export const DATE_WORDS: Record<CoverDate, string> = {
  made: 'Made',
  sold: 'Sold',
  installed: 'Installed',
  started: 'Started up',
  occupied: 'Occupied',
  'title-transfer': 'Title transferred',
};

/** As they stand in a sentence: "60 days from …". */
export const DATE_IN_SENTENCE: Record<CoverDate, string> = {
  made: 'the date of manufacture',
  sold: 'the sale',
  installed: 'the installation',
  started: 'the startup',
  occupied: 'the first occupancy',
  'title-transfer': 'the transfer of title',
};

export const EMITTER_WORDS: Record<EmitterKind, string> = {
  'floor-slab': 'floor heating in slab',
  'floor-under-wood': 'floor heating under wood',
  'panel-radiators': 'panel radiators',
  'old-radiators': 'old radiators',
  'fin-tube-baseboard': 'fin-tube baseboard',
  'fan-coil': 'fan coil',
  'hot-water-cylinder': 'hot water cylinder',
};

export const BUILDING_WORDS = {
  home: 'Home',
  rental: 'Rental',
  'new-build': 'New build',
  commercial: 'Commercial',
} as const;

export const ROLE_WORDS = {
  owner: 'Owner',
  landlord: 'Landlord',
  builder: 'Builder',
  occupant: 'Occupant',
  payer: 'Pays the bill',
  'key-holder': 'Holds the key',
  fitter: 'Installer',
  supplier: 'Supplier',
} as const;

export const CREW_WORDS = {
  lead: 'In charge',
  licensed: 'Licensed person',
  helper: 'Helper',
} as const;

export const KIND_WORDS = {
  startup: 'Startup record and registration packet',
  service: 'Service record',
  repair: 'Repair record',
  'follow-up': 'Follow-up record',
} as const;

export const OUTCOME_WORDS = {
  finished: 'Finished',
  'return-needed': 'A return visit is needed',
  'site-not-ready': 'The site was not ready',
  'made-safe': 'Left isolated and labelled',
} as const;

/** Codes of firing points and other points of reading, when the sheet has no label for them. */
const POINTS: Readonly<Record<string, string>> = {
  static: 'static, burner off',
  dynamic: 'dynamic, high fire',
  'dynamic-all-on': 'dynamic, every appliance on',
  cold: 'cold',
  hot: 'hot',
  'after-purge': 'after purging',
  before: 'before',
  after: 'after',
  firing: 'burner on',
  minimum: 'least that fires',
};

export function pointText(
  point: string | null,
  firingPoints: readonly { readonly key: string; readonly label: string }[],
): string | null {
  if (point === null) return null;
  return firingPoints.find((one) => one.key === point)?.label ?? POINTS[point] ?? asWords(point).toLowerCase();
}

/** `CO as measured, high fire`. */
export function readingLabel(
  quantity: string,
  point: string | null,
  firingPoints: readonly { readonly key: string; readonly label: string }[],
): string {
  const label = quantityLabel(quantity);
  // The quantities of a tightness test name the test themselves.
  const where = point === 'test' ? null : pointText(point, firingPoints);
  return where === null ? label : `${label}, ${where.toLowerCase()}`;
}

export function yesNoText(value: string): string {
  return (
    { yes: 'Yes', no: 'No', 'not-applicable': 'Not applicable', [COPIED_ANSWER]: 'Listed on paper' }[value] ?? value
  );
}
