/** What a packet is made of: the record of one run, what is behind its commitments, and what happened around it since. */
import type { Deadline, PacketGap } from '../../contract/registrations.ts';
import type { Disclosure } from '../../sealing/commitment.ts';
import type { AnyRecord } from '../../sealing/sealedRecord.ts';

export type PacketPhoto = {
  readonly sha256: string;
  readonly mediaType: string;
  readonly fileName: string;
  /**
   * As stored. In the pages the place and all other camera data are left out; the ZIP has the bytes as they are, or the copy
   * where they may say a place. Empty: not read, which is enough to say what a packet lacks and never enough to make one.
   */
  readonly bytes: Uint8Array;
  /** Absent: there is none, because none is needed. */
  readonly copyBytes?: Uint8Array;
};

/** The proof of one later service: what a maker asks for year by year. */
export type ServiceProof = {
  readonly on: string;
  readonly firm: string;
  readonly personName: string | null;
  readonly licenceNumber: string | null;
  /** Fingerprint of that visit's own record; null: no sealed record. */
  readonly recordSha256: string | null;
  readonly invoiceNumber: string | null;
};

export type PacketRegistration = {
  readonly by: 'office' | 'owner' | null;
  readonly ownerConsentOn: string | null;
  readonly deadline: Deadline | null;
  readonly submittedOn: string | null;
  readonly confirmedOn: string | null;
  readonly number: string | null;
};

/** What the packet can say, before it is decided whether that is enough. */
export type PacketFacts = {
  readonly record: AnyRecord;
  readonly disclosures: readonly Disclosure[];
  /** The head of the last day on which the firm sealed anything before; absent: there was none, or this is a draft. */
  readonly dayHead?: { readonly day: string; readonly sha256: string };
  readonly photos: readonly PacketPhoto[];
  readonly registration: PacketRegistration;
  readonly services: readonly ServiceProof[];
};

export type PacketInput = PacketFacts & {
  readonly gaps: readonly PacketGap[];
  /** Marked on every page. A record that is not sealed makes a draft in any case. */
  readonly isDraft: boolean;
  /** The owner's reason for a packet in spite of gaps. */
  readonly gapReason: string | null;
  /** When this document is made; a sealed record's own moment is used instead, so that the bytes never change. */
  readonly madeAt: string;
  /** Each value in both unit systems, the record's own one first. */
  readonly showsBothUnits: boolean;
};
