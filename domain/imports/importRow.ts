/** One line of an old list, read: what it says of a customer, a site, an appliance and one past service. */
import type { FuelKey } from '../procedure/modelSheet.ts';

export type ImportDayOrder = 'day-first' | 'month-first';

/** How a file is to be read; everything that cannot be told from the file is said here, and by a person. */
export type ImportReading = {
  /** null: not known; a day that can be meant both ways is then an error. */
  readonly dayOrder: ImportDayOrder | null;
  readonly powerUnit: 'kW' | 'Btu/h';
  readonly lengthUnit: 'm' | 'ft';
  readonly country: string;
  readonly buildingKind: BuildingKind;
  readonly customerKind: 'person' | 'firm';
  /** Where a row names no site of its own: the site is at the customer's address. */
  readonly siteAtCustomer: boolean;
  /** The last day that can be in the past. */
  readonly today: string;
};

export type BuildingKind = 'home' | 'rental' | 'new-build' | 'commercial';
export type ImportDate = { readonly on: string; readonly precision: 'day' | 'month' | 'year' };

export type ImportCustomer = {
  readonly number: string | null;
  readonly kind: 'person' | 'firm';
  readonly name: string;
  readonly contactName: string | null;
  readonly language: 'en' | 'fr' | 'es' | null;
  readonly email: string | null;
  readonly phone: string | null;
  readonly street: string | null;
  readonly postcode: string | null;
  readonly city: string | null;
  readonly region: string | null;
  readonly country: string;
  readonly note: string | null;
};

export type ImportSite = {
  readonly label: string | null;
  readonly street: string;
  readonly postcode: string | null;
  readonly city: string;
  readonly region: string | null;
  readonly country: string;
  readonly buildingKind: BuildingKind;
  readonly access: string | null;
  readonly altitudeM: number | null;
};

export type ImportAppliance = {
  readonly maker: string | null;
  readonly model: string | null;
  readonly serial: string;
  readonly plateFuel: FuelKey | null;
  readonly ratedInputKw: number | null;
  readonly position: string | null;
  readonly note: string | null;
  readonly dates: readonly (ImportDate & { readonly kind: 'made' | 'sold' | 'installed' | 'started' })[];
};

export type ImportService = {
  readonly on: string;
  readonly by: string | null;
  readonly invoice: string | null;
  readonly note: string | null;
};

export type ImportRow = {
  /** As a spreadsheet counts: the headings are row 1. */
  readonly row: number;
  /** null: the file names no customers; its appliances are looked up by their serials. */
  readonly customer: ImportCustomer | null;
  readonly site: ImportSite | null;
  readonly appliance: ImportAppliance | null;
  readonly service: ImportService | null;
};

export type ImportIssueCode =
  | 'needed'
  | 'too-long'
  | 'line-break'
  | 'not-an-email'
  | 'formula-cell'
  | 'spoiled-number'
  | 'not-a-day'
  | 'day-month-ambiguous'
  | 'short-year'
  | 'day-in-future'
  | 'not-a-number'
  | 'number-ambiguous'
  | 'not-possible'
  | 'unknown-word'
  | 'too-many-cells'
  | 'too-few-cells'
  | 'dates-out-of-order'
  | 'serial-twice'
  | 'serial-on-file'
  | 'serial-not-on-file'
  | 'serial-of-several'
  | 'number-of-two-customers';

export type ImportIssue = {
  readonly row: number;
  /** Counted from 0; null: the row as a whole. */
  readonly column: number | null;
  readonly code: ImportIssueCode;
  /** What was read, or what it clashes with. */
  readonly detail: string | null;
};
