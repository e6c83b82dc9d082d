/** A date of an appliance as it is on file, known to the day, the month or the year. */
import type { CoverDate } from '../procedure/modelSheet.ts';
import type { DatePrecision } from '../vocabulary/places.ts';

export type KnownDate = { readonly kind: CoverDate; readonly on: string; readonly precision: DatePrecision };
