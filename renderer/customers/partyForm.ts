/** A person or firm as a form holds it. */
import type { PartyFields } from '../../electron/contract/parties.ts';
import type { FormReader } from '../form/FormReader.ts';

export type PartyForm = {
  readonly kind: string;
  readonly name: string;
  readonly contactName: string;
  readonly language: string;
  readonly email: string;
  readonly phoneTyped: string;
  readonly street: string;
  readonly postcode: string;
  readonly city: string;
  readonly region: string;
  readonly country: string;
  readonly note: string;
};

export function emptyParty(country: string): PartyForm {
  return {
    kind: 'person',
    name: '',
    contactName: '',
    language: '',
    email: '',
    phoneTyped: '',
    street: '',
    postcode: '',
    city: '',
    region: '',
    country,
    note: '',
  };
}

/** What was searched for, in the field it belongs to: a number to call, or a name. A street or a serial number is neither. */
export function partyTyped(query: string): Partial<PartyForm> {
  const text = query.trim();
  if (/^[+(]?\d[\d\s().+/-]*$/.test(text)) return { phoneTyped: text };
  return /\d/.test(text) ? {} : { name: text };
}

export function partyToForm(party: PartyFields): PartyForm {
  return {
    kind: party.kind,
    name: party.name,
    contactName: party.contactName ?? '',
    language: party.language ?? '',
    email: party.email ?? '',
    phoneTyped: party.phoneTyped ?? '',
    street: party.street ?? '',
    postcode: party.postcode ?? '',
    city: party.city ?? '',
    region: party.region ?? '',
    country: party.country ?? '',
    note: party.note ?? '',
  };
}

export function partyFromForm(form: PartyForm, reader: FormReader): PartyFields {
  return {
    kind: form.kind === 'firm' ? 'firm' : 'person',
    name: form.name,
    contactName: reader.optional(form.contactName),
    language: form.language === 'en' || form.language === 'fr' || form.language === 'es' ? form.language : null,
    email: reader.optional(form.email),
    phoneTyped: reader.optional(form.phoneTyped),
    street: reader.optional(form.street),
    postcode: reader.optional(form.postcode),
    city: reader.optional(form.city),
    region: reader.optional(form.region),
    country: reader.optional(form.country),
    note: reader.optional(form.note),
  };
}
