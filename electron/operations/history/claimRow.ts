/** A claim as it is kept: its outcome follows from what was decided of parts and labour. */
import type { ClaimRecord } from '../../../db/applianceHistory.ts';
import type { ClaimFields } from '../../contract/history.ts';
import { fail } from '../handler.ts';

export function toClaimRow({ isWithdrawn, ...fields }: ClaimFields) {
  const hasMoney = [
    fields.partsMinorUnits,
    fields.labourMinorUnits,
    fields.partsGrantedMinorUnits,
    fields.labourGrantedMinorUnits,
  ].some((amount) => amount !== null);
  if (hasMoney && fields.currency === null) return fail('currency-missing', {});
  requireOrder(fields.openedOn, fields.sentOn, 'opened', 'sent');
  requireOrder(fields.openedOn, fields.decidedOn, 'opened', 'decided');
  requireOrder(fields.openedOn, fields.partReturnedOn, 'opened', 'part sent back');
  requireWithin('parts', fields.partsMinorUnits, fields.partsGrantedMinorUnits);
  requireWithin('labour', fields.labourMinorUnits, fields.labourGrantedMinorUnits);
  return { ...fields, outcome: isWithdrawn ? 'withdrawn' : overall(fields) };
}

/** Parts and labour are decided apart; the claim is open until each that was asked for is decided. */
function overall(fields: Omit<ClaimFields, 'isWithdrawn'>): ClaimRecord['outcome'] {
  const asked = [
    { amount: fields.partsMinorUnits, outcome: fields.partsOutcome },
    { amount: fields.labourMinorUnits, outcome: fields.labourOutcome },
  ].filter(({ amount, outcome }) => amount !== null || outcome !== null);
  if (asked.length === 0 || asked.some(({ outcome }) => outcome === null)) return 'open';
  const [first] = asked;
  return asked.every(({ outcome }) => outcome === first?.outcome) ? (first?.outcome ?? 'open') : 'granted-in-part';
}

function requireOrder(earlierOn: string, laterOn: string | null, earlier: string, later: string): void {
  if (laterOn !== null && laterOn < earlierOn) fail('days-out-of-order', { earlier, later });
}

function requireWithin(what: 'parts' | 'labour', asked: number | null, granted: number | null): void {
  if (asked !== null && granted !== null && granted > asked) fail('granted-more-than-asked', { what });
}
