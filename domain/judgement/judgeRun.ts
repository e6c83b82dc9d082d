/** Judges a whole run: every rule over every reading, in an order that does not depend on how the record was stored. */
import { QUANTITY_KEYS, type QuantityKey } from '../quantity/quantities.ts';
import { judgeCeilings } from './ceilings/judgeCeilings.ts';
import { judgeHotOutlet } from './ceilings/judgeHotOutlet.ts';
import { judgeReliefHeadroom } from './ceilings/judgeReliefHeadroom.ts';
import { judgeVentTemperature } from './ceilings/judgeVentTemperature.ts';
import { judgeUndilutedCo } from './ceilings/undilutedCo.ts';
import { answersDisagree } from './computed/answersDisagree.ts';
import { clockedInput } from './computed/clockedInput.ts';
import { coldFillForHeight } from './computed/coldFillForHeight.ts';
import { combustionQuality } from './computed/combustionQuality.ts';
import { coRising } from './computed/coRising.ts';
import { DRIFT_FROM, driftSinceVisits } from './computed/driftSinceVisits.ts';
import { factoryDefaults } from './computed/factoryDefaults.ts';
import { fuelOfPair } from './computed/fuelOfPair.ts';
import { heatOutputOfCircuit } from './computed/heatOutputOfCircuit.ts';
import { hotBelowSetting } from './computed/hotBelowSetting.ts';
import { inletDrop } from './computed/inletDrop.ts';
import { jointsPhotographed } from './computed/jointsPhotographed.ts';
import { lockoutPattern } from './computed/lockoutPattern.ts';
import { outdoorSensor } from './computed/outdoorSensor.ts';
import { supplyForEmitters } from './computed/supplyForEmitters.ts';
import { vesselTakes } from './computed/vesselTakes.ts';
import { worseAfterWork } from './computed/worseAfterWork.ts';
import { zoneAgainstFire } from './computed/zoneAgainstFire.ts';
import type { Finding } from './finding.ts';
import type { JudgeInput } from './judgeInput.ts';
import { derivedValues } from './limits/derivedValues.ts';
import { judgedReading } from './limits/judgedValue.ts';
import { judgeSheetLimits } from './limits/sheetLimits.ts';
import { judgeSheetRelations } from './limits/sheetRelations.ts';
import { markNewReadings } from './markNewReadings.ts';
import type { MistakeRule } from './mistakes/mistakeFinding.ts';
import { MISTAKE_RULES } from './mistakes/mistakeRules.ts';
import { judgeFreshAir } from './proof/judgeFreshAir.ts';
import { judgeHolds } from './proof/judgeHolds.ts';
import { type RunContext, runContext } from './runContext.ts';

export function judgeRun(input: JudgeInput): readonly Finding[] {
  const context = runContext(input);
  const judged = judgeNumbers(context);
  return sortedFindings([...judged, ...questions(MISTAKE_RULES, () => judged, input, context)]);
}

/** What `judgeRun` says of one reading and of all that is computed from it, without the work for the others. */
export function judgeRunAbout(input: JudgeInput, readingId: string): readonly Finding[] {
  const context = runContext(input);
  const about = (finding: Finding) => isAbout(finding, readingId);
  const judged = judgeNumbers(context, readingId).filter(about);
  const raised = questions(MISTAKE_RULES, () => judgeNumbers(context), input, context, about);
  return sortedFindings([...judged, ...raised]);
}

export function isAbout(finding: Finding, readingId: string): boolean {
  return finding.readingId === readingId || Object.values(finding.basis.inputs).includes(readingId);
}

/** `judged` is only asked for when there is something to suggest. */
function questions(
  rules: readonly MistakeRule[],
  judged: () => readonly Finding[],
  input: JudgeInput,
  context: RunContext,
  isWanted: (finding: Finding) => boolean = () => true,
): readonly Finding[] {
  const raised = rules.flatMap((rule) => rule.find(context)).filter(isWanted);
  if (raised.length === 0) return [];
  return markNewReadings(raised, judged(), input, (changed) => judgeNumbers(runContext(changed)));
}

/**
 * Everything but the question whether the numbers were typed right. With a reading to look at, rules and values that cannot
 * have to do with it are left out; a finding about another one may still be among the answers.
 */
function judgeNumbers(context: RunContext, readingId: string | null = null): readonly Finding[] {
  const quantities = new Set(
    context.measured.filter(({ reading }) => reading.readingId === readingId).map(({ quantity }) => quantity),
  );
  const isCalledFor = ({ from }: ComputedRule) => readingId === null || from.some((one) => quantities.has(one));
  return [
    ...judgeAgainstLimits(context, readingId),
    ...COMPUTED_RULES.filter(isCalledFor).flatMap(({ judge }) => judge(context)),
  ];
}

type ComputedRule = {
  readonly judge: (context: RunContext) => readonly Finding[];
  /** The quantities its findings name among their inputs. */
  readonly from: readonly QuantityKey[];
};

const COMPUTED_RULES: readonly ComputedRule[] = [
  { judge: combustionQuality, from: ['o2DryVolPct', 'flueGasC', 'intakeAirC', 'returnC'] },
  { judge: fuelOfPair, from: ['o2DryVolPct', 'co2DryVolPct', 'coPpm'] },
  { judge: clockedInput, from: ['meterDialM3', 'meterTurns', 'meterSeconds', 'heatingValueMjPerM3'] },
  { judge: heatOutputOfCircuit, from: ['systemFlowLPerMin', 'supplyC', 'returnC'] },
  { judge: coldFillForHeight, from: ['systemPressureBarG'] },
  { judge: inletDrop, from: ['inletPressureMbarG'] },
  { judge: coRising, from: ['coPpm'] },
  { judge: supplyForEmitters, from: ['supplySetpointC', 'manifoldSupplyC', 'resetDesignSupplyC'] },
  { judge: outdoorSensor, from: ['displayOutdoorC', 'outdoorC'] },
  // A setting of any kind may have a factory default.
  { judge: factoryDefaults, from: QUANTITY_KEYS },
  { judge: answersDisagree, from: [] },
  { judge: worseAfterWork, from: ['coPpm'] },
  { judge: driftSinceVisits, from: DRIFT_FROM },
  { judge: lockoutPattern, from: ['inletPressureMbarG'] },
  { judge: vesselTakes, from: ['vesselPreChargeBarG', 'systemPressureBarG', 'reliefSettingBarG'] },
  { judge: hotBelowSetting, from: ['systemPressureBarG', 'supplyC', 'supplySetpointC', 'resetDesignSupplyC'] },
  { judge: jointsPhotographed, from: ['ventPhotos'] },
  { judge: zoneAgainstFire, from: [] },
];

/** Limits, relations, ceilings and proof. */
function judgeAgainstLimits(context: RunContext, readingId: string | null): readonly Finding[] {
  const wanted = context.measured.filter(({ reading }) => readingId === null || reading.readingId === readingId);
  const points = new Set(wanted.map(({ point }) => point));
  const derived = derivedValues(
    context.rows.filter(({ point }) => points.has(point)),
    context,
  );
  const values = [...wanted.map((one) => judgedReading(one, context)), ...derived];
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
    ...judgeHotOutlet(context),
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
    compare(inputsText(one), inputsText(other)) ||
    compare(JSON.stringify(one), JSON.stringify(other))
  );
}

/** Tells the samples of one computed number apart; cheaper than the whole finding. */
function inputsText({ basis }: Finding): string {
  return Object.values(basis.inputs).join('|');
}

function compare(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
