/** What one message would be about and whom it would go to, wherever it comes from: a reminder, a booked visit, a notice. */
import type { MessageValues } from '../../../domain/messages/fillTemplate.ts';
import type { MessageKind, MessageLanguage, WrittenChannel } from '../../../domain/messages/messageKinds.ts';

export type MessageSubject = {
  /** The same for the same message whenever it is asked for. */
  readonly key: string;
  readonly kind: MessageKind;
  readonly partyId: string;
  readonly partyName: string;
  /** null: the firm's. */
  readonly language: MessageLanguage | null;
  readonly email: string | null;
  readonly phone: string | null;
  readonly postalAddress: {
    readonly street: string | null;
    readonly postcode: string | null;
    readonly city: string | null;
    readonly region: string | null;
    readonly country: string | null;
  };
  readonly applianceId: string;
  readonly visitId: string | null;
  readonly recallId: string | null;
  readonly aboutOn: string | null;
  readonly applianceName: string;
  readonly serial: string;
  readonly site: string;
  readonly mayUse: (channel: WrittenChannel) => boolean;
  /** What was prepared on or after this day is this very message; null: whenever it was. */
  readonly sendOn: string | null;
  readonly valuesIn: (language: MessageLanguage) => MessageValues;
};

type Address = MessageSubject['postalAddress'];

/** A person's own address, else the site's. */
export function postalAddressOf(party: Address, site: Address): Address {
  const { street, postcode, city, region, country } = party.street !== null && party.city !== null ? party : site;
  return { street, postcode, city, region, country };
}

export function siteText(site: { readonly street: string | null; readonly city: string | null }): string {
  return [site.street, site.city].filter(Boolean).join(', ');
}
