/** Judges a whole run: every rule over every reading, in an order that does not depend on how the record was stored. */
import { judgeCeilings } from './ceilings/judgeCeilings.ts';
import { judgeReliefHeadroom } from './ceilings/judgeReliefHeadroom.ts';
import { judgeVentTemperature } from './ceilings/judgeVentTemperature.ts';
import { judgeUndilutedCo } from './ceilings/undilutedCo.ts';
import { answersDisagree } from './computed/answersDisagree.ts';
import { clockedInput } from './computed/clockedInput.ts';
import { coldFillForHeight } from './computed/coldFillForHeight.ts';
import { combustionQuality } from './computed/combustionQuality.ts';
import { coRising } from './computed/coRising.ts';
import { factoryDefaults } from './computed/factoryDefaults.ts';
import { heatOutputOfCircuit } from './computed/heatOutputOfCircuit.ts';
import { inletDrop } from './computed/inletDrop.ts';
import { outdoorSensor } from './computed/outdoorSensor.ts';
import { supplyForEmitters } from './computed/supplyForEmitters.ts';
import { worseAfterWork } from './computed/worseAfterWork.ts';
import type { Finding } from './finding.ts';
import type { JudgeInput } from './judgeInput.ts';
import { derivedValues } from './limits/derivedValues.ts';
import { judgedReading } from './limits/judgedValue.ts';
import { judgeSheetLimits } from './limits/sheetLimits.ts';
import { judgeSheetRelations } from './limits/sheetRelations.ts';
import { markNewReadings } from './markNewReadings.ts';
import { MISTAKE_RULES } from './mistakes/mistakeRules.ts';
import { judgeFreshAir } from './proof/judgeFreshAir.ts';
import { judgeHolds } from './proof/judgeHolds.ts';
import { type RunContext, runContext } from './runContext.ts';

export function judgeRun(input: JudgeInput): readonly Finding[] {
  const context = runContext(input);
  const judged = judgeNumbers(context);
  const mistakes = MISTAKE_RULES.flatMap((rule) => rule.find(context));
  const marked = markNewReadings(mistakes, judged, input, (changed) => judgeNumbers(runContext(changed)));
  return sortedFindings([...judged, ...marked]);
}

/** Everything but the question whether the numbers were typed right. */
function judgeNumbers(context: RunContext): readonly Finding[] {
  return [...judgeAgainstLimits(context), ...COMPUTED_RULES.flatMap((rule) => rule(context))];
}

const COMPUTED_RULES: ReadonlyArray<(context: RunContext) => readonly Finding[]> = [
  combustionQuality,
  clockedInput,
  heatOutputOfCircuit,
  coldFillForHeight,
  inletDrop,
  coRising,
  supplyForEmitters,
  outdoorSensor,
  factoryDefaults,
  answersDisagree,
  worseAfterWork,
];

/** Limits, relations, ceilings and proof. */
function judgeAgainstLimits(context: RunContext): readonly Finding[] {
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

function sortedFindings(findings: readonly Finding[]): readonly Finding[] {
  return [...findings].sort(bySubject);
}

function bySubject(one: Finding, other: Finding): number {
  return (
    compare(one.subject, other.subject) ||
    compare(one.readingId ?? '', other.readingId ?? '') ||
    compare(JSON.stringify(one.basis), JSON.stringify(other.basis))
  );
}

function compare(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
