/** The states of a registration, as people say them. */
import type { RegistrationRow } from '../../electron/contract/registrations.ts';

export const STATE_WORDS: Readonly<Record<RegistrationRow['state'], string>> = {
  recording: 'not complete yet',
  ready: 'ready to submit',
  submitted: 'submitted, not confirmed',
  confirmed: 'confirmed by the maker',
};

export const BY_WORDS: Readonly<Record<RegistrationRow['by'], string>> = {
  office: 'we register',
  owner: 'the owner registers',
};
