/**
 * Where a law may say otherwise than the maker's terms: published rules by place, each with its name. Notes for a person
 * to read, not legal advice; they never change a date of the maker's own terms.
 */
import { z } from 'zod';
import { REGION_CODES, regionCodeOf } from '../vocabulary/regions.ts';

export const coverLaw = z.strictObject({
  key: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/),
  /** ISO 3166-1 codes. */
  countries: z.array(z.string().regex(/^[A-Z]{2}$/)).min(1),
  /** ISO 3166-2 codes; null: the whole country. */
  regions: z.array(z.enum(REGION_CODES)).min(1).nullable(),
  title: z.string().min(1),
  /** The clause, by which anybody can look it up. */
  source: z.string().min(1),
  /** What this row was held against: the law's own words, or a published summary of them. */
  checked: z.enum(['text', 'summary']),
  uses: z.array(z.enum(['home', 'commercial'])).min(1),
  effect: z.discriminatedUnion('kind', [
    /** At least so long from delivery, against the seller, whatever the maker states. */
    z.strictObject({ kind: z.literal('minimum-months'), months: z.number().int().positive() }),
    /** Cover may not hang on a registration. */
    z.strictObject({ kind: z.literal('registration-not-needed') }),
    /** The warranty has to say whether cover hangs on a registration card. */
    z.strictObject({ kind: z.literal('registration-must-be-told') }),
    /** A new owner has it without asking. */
    z.strictObject({ kind: z.literal('passes-to-new-owner') }),
  ]),
});
export type CoverLaw = z.infer<typeof coverLaw>;

const EUROPEAN_UNION = [
  'AT',
  'BE',
  'BG',
  'HR',
  'CY',
  'CZ',
  'DK',
  'EE',
  'FI',
  'FR',
  'DE',
  'GR',
  'HU',
  'IE',
  'IT',
  'LV',
  'LT',
  'LU',
  'MT',
  'NL',
  'PL',
  'PT',
  'RO',
  'SK',
  'SI',
  'ES',
  'SE',
];

export const COVER_LAWS: readonly CoverLaw[] = [
  {
    key: 'eu-legal-guarantee',
    countries: EUROPEAN_UNION,
    regions: null,
    title:
      'Legal guarantee of conformity: the seller answers to a consumer for two years from delivery; some member states give longer.',
    source: 'Directive (EU) 2019/771 art. 10(1)',
    checked: 'summary',
    uses: ['home'],
    effect: { kind: 'minimum-months', months: 24 },
  },
  {
    key: 'es-legal-guarantee',
    countries: ['ES'],
    regions: null,
    title: 'Legal guarantee of conformity: three years from delivery for goods sold to a consumer since 2022.',
    source: 'Real Decreto Legislativo 1/2007 art. 120, as amended by Real Decreto-ley 7/2021',
    checked: 'text',
    uses: ['home'],
    effect: { kind: 'minimum-months', months: 36 },
  },
  {
    key: 'pt-legal-guarantee',
    countries: ['PT'],
    regions: null,
    title: 'Legal guarantee of conformity: three years from delivery for goods sold to a consumer since 2022.',
    source: 'Decreto-Lei 84/2021 art. 12',
    checked: 'summary',
    uses: ['home'],
    effect: { kind: 'minimum-months', months: 36 },
  },
  {
    key: 'us-ca-registration-card',
    countries: ['US'],
    regions: ['US-CA'],
    title:
      'A registration card must say that it is for registration and that not returning it takes no warranty rights away.',
    source: 'California Civil Code § 1793.1(a)',
    checked: 'summary',
    uses: ['home'],
    effect: { kind: 'registration-not-needed' },
  },
  {
    key: 'us-fl-registration',
    countries: ['US'],
    regions: ['US-FL'],
    title:
      'Only where the home was sold since July 2024, which nothing here checks: then a maker’s warranty of its heating and cooling system may in no way hang on registration.',
    source: 'Florida Statutes § 559.956(4) and (5)',
    checked: 'text',
    uses: ['home'],
    effect: { kind: 'registration-not-needed' },
  },
  {
    key: 'us-fl-new-owner',
    countries: ['US'],
    regions: ['US-FL'],
    title:
      'Only where the home was sold since July 2024, which nothing here checks: then what is left of a maker’s warranty of its heating and cooling system passes to the buyer by itself, without charge.',
    source: 'Florida Statutes § 559.956(1) to (3)',
    checked: 'text',
    uses: ['home'],
    effect: { kind: 'passes-to-new-owner' },
  },
  {
    key: 'us-registration-card',
    countries: ['US'],
    regions: null,
    title:
      'Where returning a registration card is a condition of cover, the warranty has to say so; where it only looks like one, the warranty has to say that it is none.',
    source: '16 CFR § 701.4',
    checked: 'text',
    uses: ['home'],
    effect: { kind: 'registration-must-be-told' },
  },
];

export function coverLawsOf(place: {
  readonly country: string;
  readonly region: string | null;
  readonly use: 'home' | 'commercial' | null;
}): readonly CoverLaw[] {
  const country = place.country.trim().toUpperCase();
  const region = regionCodeOf(place.region);
  return COVER_LAWS.filter(
    (law) =>
      law.countries.includes(country) &&
      (law.regions === null || (region !== null && law.regions.includes(region))) &&
      (place.use === null || law.uses.includes(place.use)),
  );
}
