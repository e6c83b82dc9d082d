/** What a customer agreed with the firm about services: an interval of their own, from a day, to a day or until somebody ends it. */
export type ServiceAgreement = {
  readonly agreementId: string;
  readonly number: string | null;
  readonly everyMonths: number;
  readonly fromOn: string;
  /** The last day it is in force; null: open. */
  readonly toOn: string | null;
};

/** In force on at least one same day: which of the two asks for the service could not be told. */
export function agreementsOverlap(
  a: Pick<ServiceAgreement, 'fromOn' | 'toOn'>,
  b: Pick<ServiceAgreement, 'fromOn' | 'toOn'>,
): boolean {
  return (b.toOn === null || a.fromOn <= b.toOn) && (a.toOn === null || b.fromOn <= a.toOn);
}
