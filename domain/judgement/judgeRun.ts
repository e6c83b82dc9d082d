/** Judges a whole run: every rule over every reading, in an order that does not depend on how the record was stored. */
import { judgeCeilings } from './ceilings/judgeCeilings.ts';
import { judgeReliefHeadroom } from './ceilings/judgeReliefHeadroom.ts';
import { judgeVentTemperature } from './ceilings/judgeVentTemperature.ts';
import { judgeUndilutedCo } from './ceilings/undilutedCo.ts';
import type { Finding } from './finding.ts';
import type { JudgeInput } from './judgeInput.ts';
import { derivedValues } from './limits/derivedValues.ts';
import { judgedReading } from './limits/judgedValue.ts';
import { judgeSheetLimits } from './limits/sheetLimits.ts';
import { judgeSheetRelations } from './limits/sheetRelations.ts';
import { judgeFreshAir } from './proof/judgeFreshAir.ts';
import { judgeHolds } from './proof/judgeHolds.ts';
import { type RunContext, runContext } from './runContext.ts';

export function judgeRun(input: JudgeInput): readonly Finding[] {
  const context = runContext(input);
  return sortedFindings(judgeAgainstLimits(context));
}

/** Limits, relations, ceilings and proof. */
export function judgeAgainstLimits(context: RunContext): readonly Finding[] {
  const derived = derivedValues(context);
  const values = [...context.measured.map((one) => judgedReading(one, context)), ...derived];
  const withAirFree = new Set(
    derived.filter(({ quantity }) => quantity === 'coAirFreePpm').flatMap(({ basis }) => Object.values(basis.inputs)),
  );
  return [
    ...judgeSheetLimits(values, context),
    ...judgeSheetRelations(context),
    ...judgeCeilings(values, context),
    ...judgeUndilutedCo(context, (readingId) => withAirFree.has(readingId)),
    ...judgeReliefHeadroom(context),
    ...judgeVentTemperature(context),
    ...judgeFreshAir(context),
    ...judgeHolds(context),
  ];
}

export function sortedFindings(findings: readonly Finding[]): readonly Finding[] {
  return findings
    .map((finding) => ({ finding, order: `${finding.subject}|${finding.readingId}|${JSON.stringify(finding.basis)}` }))
    .sort((one, other) => (one.order < other.order ? -1 : one.order > other.order ? 1 : 0))
    .map(({ finding }) => finding);
}
