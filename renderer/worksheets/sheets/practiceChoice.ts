/** Whose customs the pressures follow. */
import type { PressurePractice } from '../../../domain/hydronics/pressure/pressureCustoms.ts';
import { choice } from '../core/fields.ts';

export const PRACTICES: Readonly<Record<PressurePractice, string>> = {
  europe: 'Europe',
  'north-america': 'North America',
};

export const practiceField = choice(
  'Customs of',
  PRACTICES,
  { metric: 'europe', us: 'north-america' },
  { onFile: 'practice' },
);
