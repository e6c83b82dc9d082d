/**
 * The sheet's own limits, by quantity, point and fuel. Where the sheet is silent the finding says so and no band of the
 * trade takes the maker's place. A limit looser than a safety ceiling is applied as the ceiling.
 */
import type { SheetLimit } from '../../procedure/modelSheet.ts';
import { buildFinding } from '../buildFinding.ts';
import type { Finding, FindingBasis } from '../finding.ts';
import { FLUE_GAS, NOT_JUDGED_ALONE } from '../quantityGroups.ts';
import type { RunContext } from '../runContext.ts';
import { ceilingsFor, type SafetyCeiling } from '../safetyCeilings.ts';
import { againstLimit, type Bounds } from './againstLimit.ts';
import type { JudgedValue } from './judgedValue.ts';

export function judgeSheetLimits(values: readonly JudgedValue[], context: RunContext): readonly Finding[] {
  const byQuantity = Map.groupBy(context.sheet.limits, (limit) => limit.quantity);
  return values.flatMap((value) => {
    const limits = (byQuantity.get(value.quantity) ?? []).filter(
      (limit) =>
        (limit.point === null || limit.point === value.point) &&
        (limit.fuel === null || limit.fuel === context.record.fuel),
    );
    return limits.length > 0 ? limits.map((limit) => judge(value, limit, context)) : noLimit(value, context);
  });
}

function judge(value: JudgedValue, limit: SheetLimit, context: RunContext): Finding {
  const applied = tightened(limit, context);
  const { verdict, isNominallyInside } = againstLimit(value, applied.bounds);
  const isStop = verdict === 'stop';
  // Nominally inside and proven, but closer to the limit than the instrument can tell: nobody has to wait for a better one.
  const isGoodEnough = verdict === 'cannot-tell-apart' && isNominallyInside && value.proof.proven;
  return buildFinding({
    subject: subjectOf(value),
    readingId: value.readingId,
    verdict,
    proof: value.proof,
    blocks: isGoodEnough ? [] : limit.blocks,
    basis: {
      ...value.basis,
      ...applied.basis,
      limit: {
        quantity: value.quantity,
        point: limit.point,
        min: applied.bounds.min,
        max: applied.bounds.max,
        severity: limit.severity,
      },
    },
    missing: verdict === 'cannot-judge' ? ['a reading inside the instrument’s range'] : [],
    makeSafe: isStop
      ? ['Burner off; shut the gas valve at the appliance.', 'Find the cause before it runs again.']
      : [],
  });
}

type Tightened = { readonly bounds: Bounds; readonly basis: Pick<FindingBasis, 'from' | 'source' | 'sheet'> };

function tightened(limit: SheetLimit, context: RunContext): Tightened {
  const { sheetId, revision } = context.sheet;
  const bounds = {
    min: limit.min ?? null,
    max: limit.max ?? null,
    edge: limit.edge ?? 0,
    severity: limit.severity,
  };
  const tighter = ceilingsFor(context.region).find(
    (ceiling) => ceiling.quantity === limit.quantity && isTighter(ceiling, bounds),
  );
  if (tighter === undefined) {
    return { bounds, basis: { from: 'sheet', source: limit.basis, sheet: { sheetId, revision } } };
  }
  return {
    bounds: {
      ...bounds,
      min: tighter.min === undefined ? bounds.min : Math.max(tighter.min, bounds.min ?? tighter.min),
      max: tighter.max === undefined ? bounds.max : Math.min(tighter.max, bounds.max ?? tighter.max),
    },
    basis: { from: 'ceiling', source: tighter.source, sheet: null },
  };
}

/** Only where the sheet sets that bound at all and sets it wider: the ceiling itself is judged beside it anyway. */
function isTighter(ceiling: SafetyCeiling, bounds: Bounds): boolean {
  return (
    (ceiling.max !== undefined && bounds.max !== null && ceiling.max < bounds.max) ||
    (ceiling.min !== undefined && bounds.min !== null && ceiling.min > bounds.min)
  );
}

function noLimit(value: JudgedValue, context: RunContext): readonly Finding[] {
  if (NOT_JUDGED_ALONE.has(value.quantity) && value.readingId !== null) return [];
  const isFlueGasAtFiringPoint =
    FLUE_GAS.has(value.quantity) && value.point !== null && context.firingPoints.has(value.point);
  return [
    buildFinding({
      subject: subjectOf(value),
      readingId: value.readingId,
      verdict: 'no-limit-on-sheet',
      proof: value.proof,
      // Without a limit there is nothing to be outside of, but combustion must be proven all the same before leaving.
      blocks: isFlueGasAtFiringPoint ? ['leaving'] : [],
      basis: { ...value.basis, sheet: { sheetId: context.sheet.sheetId, revision: context.sheet.revision } },
    }),
  ];
}

function subjectOf({ quantity, point }: JudgedValue): string {
  return `limit:${quantity}${point === null ? '' : `@${point}`}`;
}
