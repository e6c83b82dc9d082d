/** The company's particulars as a form holds them, and what this computer suggests for a new one. */
import { Temporal } from 'temporal-polyfill';
import type { CompanyProfile } from '../../electron/contract/app.ts';
import type { FormReader } from '../form/FormReader.ts';

export type CompanyForm = {
  readonly name: string;
  readonly street: string;
  readonly postcode: string;
  readonly city: string;
  readonly region: string;
  readonly country: string;
  readonly phone: string;
  readonly email: string;
  readonly licenceNumber: string;
  readonly timeZone: string;
  readonly unitSystem: string;
  readonly language: string;
  readonly jurisdiction: string;
  readonly emergencyNumber: string;
};

const NORTH_AMERICA = ['US', 'CA', 'MX'];

export function suggestCompany(browserLanguage: string): CompanyForm {
  const locale = new Intl.Locale(browserLanguage);
  const country = locale.region ?? '';
  return {
    name: '',
    street: '',
    postcode: '',
    city: '',
    region: '',
    country,
    phone: '',
    email: '',
    licenceNumber: '',
    timeZone: Temporal.Now.timeZoneId(),
    unitSystem: country === 'US' ? 'us' : 'metric',
    language: ['en', 'fr', 'es'].includes(locale.language) ? locale.language : 'en',
    jurisdiction: country === '' || NORTH_AMERICA.includes(country) ? 'north-america' : 'europe',
    emergencyNumber: '',
  };
}

export function companyToForm(company: CompanyProfile): CompanyForm {
  return {
    name: company.name,
    street: company.street ?? '',
    postcode: company.postcode ?? '',
    city: company.city ?? '',
    region: company.region ?? '',
    country: company.country,
    phone: company.phone ?? '',
    email: company.email ?? '',
    licenceNumber: company.licenceNumber ?? '',
    timeZone: company.timeZone,
    unitSystem: company.unitSystem,
    language: company.language,
    jurisdiction: company.jurisdiction,
    emergencyNumber: company.emergencyNumber ?? '',
  };
}

export function companyFromForm(form: CompanyForm, reader: FormReader): CompanyProfile {
  return {
    name: form.name,
    street: reader.optional(form.street),
    postcode: reader.optional(form.postcode),
    city: reader.optional(form.city),
    region: reader.optional(form.region),
    country: form.country,
    phone: reader.optional(form.phone),
    email: reader.optional(form.email),
    licenceNumber: reader.optional(form.licenceNumber),
    timeZone: reader.timeZone('timeZone', form.timeZone),
    unitSystem: form.unitSystem === 'us' ? 'us' : 'metric',
    language: form.language === 'fr' || form.language === 'es' ? form.language : 'en',
    jurisdiction: form.jurisdiction,
    emergencyNumber: reader.optional(form.emergencyNumber),
  };
}
