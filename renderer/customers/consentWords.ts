/** Purposes and channels of consent, as people say them. */
import type { Channel, Purpose } from '../../domain/vocabulary/people.ts';

export const PURPOSE_WORDS: Readonly<Record<Purpose, string>> = {
  appointments: 'appointments',
  'service-due': 'service falling due',
  registration: 'registering the warranty on their behalf',
  offers: 'offers',
  safety: 'safety notices',
};

export const CHANNEL_WORDS: Readonly<Record<Channel, string>> = {
  'e-mail': 'e-mail',
  text: 'text message',
  phone: 'phone',
  letter: 'letter',
};
