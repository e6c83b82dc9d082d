/** What the sheet demands of the difference of one quantity between two points: low fire against high, dynamic against static. */
import type { SheetRelation } from '../../procedure/modelSheet.ts';
import { type QuantityKey, quantitySpec } from '../../quantity/quantities.ts';
import { buildFinding } from '../buildFinding.ts';
import type { Finding } from '../finding.ts';
import { inputsOf, type Measured } from '../measured.ts';
import { proofOf } from '../proof/proofOf.ts';
import type { RunContext } from '../runContext.ts';
import { againstLimit } from './againstLimit.ts';

export function judgeSheetRelations(context: RunContext): readonly Finding[] {
  return context.sheet.relations
    .filter((relation) => relation.fuel === null || relation.fuel === context.record.fuel)
    .flatMap((relation) => judge(relation, context));
}

function isAsked(context: RunContext, quantity: QuantityKey, point: string): boolean {
  return context.steps
    .flatMap(({ items }) => items)
    .some(
      (item) =>
        (item.kind === 'read' && item.quantity === quantity && item.point === point) ||
        (item.kind === 'series' && item.firingPoint === point && item.quantities.includes(quantity)),
    );
}

function judge(relation: SheetRelation, context: RunContext): readonly Finding[] {
  const { quantity, at, to, blocks } = relation;
  const one = context.latest(quantity, at);
  const other = context.latest(quantity, to);
  const read = [one, other].filter((reading): reading is Measured => reading !== undefined);
  // Nothing read yet is for the procedure to say; half read can't be judged.
  if (read.length === 0) return [];
  // Nor is it judged where the procedure asks for one of the two alone, as a service may.
  if (
    (one === undefined && !isAsked(context, quantity, at)) ||
    (other === undefined && !isAsked(context, quantity, to))
  )
    return [];
  const limit = {
    quantity,
    point: `${at} − ${to}`,
    min: relation.minDifference ?? null,
    max: relation.maxDifference ?? null,
    severity: 'outside' as const,
  };
  const basis = {
    limit,
    from: 'sheet' as const,
    source: relation.basis,
    sheet: { sheetId: context.sheet.sheetId, revision: context.sheet.revision },
    formula: `${quantitySpec(quantity).label}: ${at} − ${to}`,
    inputs: inputsOf(read),
  };
  const subject = `relation:${quantity}@${at}-${to}`;
  const proof = proofOf(read, context);
  if (one === undefined || other === undefined) {
    const lacking = one === undefined ? at : to;
    const where = context.sheet.firingPoints.find(({ key }) => key === lacking)?.label.toLowerCase();
    const missing = [`${quantitySpec(quantity).label} (${where ?? lacking.replaceAll('-', ' ')})`];
    return [buildFinding({ subject, verdict: 'cannot-judge', proof, blocks, basis, missing })];
  }
  const difference = one.value - other.value;
  const plusMinus = Math.hypot(one.plusMinus, other.plusMinus);
  const isOpen = one.reading.comparator !== '=' || other.reading.comparator !== '=';
  const spread = isOpen
    ? { value: difference, lowest: one.lowest - other.highest, highest: one.highest - other.lowest }
    : { value: difference, lowest: difference - plusMinus, highest: difference + plusMinus };
  const { verdict, isNominallyInside } = againstLimit(spread, { ...limit, edge: 0 });
  return [
    buildFinding({
      subject,
      verdict,
      proof,
      blocks: verdict === 'cannot-tell-apart' && isNominallyInside && proof.proven ? [] : blocks,
      basis: { ...basis, result: { value: difference, unit: '', plusMinus: plusMinus > 0 ? plusMinus : null } },
      missing: verdict === 'cannot-judge' ? ['readings inside the instrument’s range'] : [],
    }),
  ];
}
