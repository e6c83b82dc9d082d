/** Why an item, a step or a gate is still open, in one short line. */
import type { Block, FuelKey, LapseKind, SheetStep, StepItem } from '../../../domain/procedure/modelSheet.ts';
import type { ItemReason, ProgressBlocker, RunReason, StepLock } from '../../../domain/procedure/progressTypes.ts';
import { quantitySpec } from '../../../domain/quantity/quantities.ts';
import { assertNever } from '../../../domain/result.ts';
import { noticeName } from '../../recalls/recallWords.ts';
import { formatSeconds, secondsInWords } from '../clock/formatSeconds.ts';
import { proofWords } from './proofWords.ts';
import { verdictWords } from './verdictWords.ts';

export type WordSource = {
  readonly steps: readonly SheetStep[];
  readonly firingPointLabel: (key: string) => string;
};

export function reasonWords(reason: ItemReason | RunReason, source: WordSource): string {
  switch (reason.code) {
    case 'not-answered':
      return 'not answered';
    case 'waits-for':
      return `first: ${itemLabel(reason.itemKey, source)}`;
    case 'may-not-be-left-out':
      return `cannot be left out (“${reason.reason}”)`;
    case 'not-measured':
      return `${quantitySpec(reason.quantity).label} not measured: ${reason.reason}`;
    case 'too-few-samples':
      return `${quantitySpec(reason.quantity).label}: ${reason.have} of ${reason.need} samples`;
    case 'firing-point-not-reached':
      return `press when the burner is at ${source.firingPointLabel(reason.firingPoint)}`;
    case 'hold-running':
      return `${formatSeconds(reason.secondsLeft)} to wait`;
    case 'hold-ended-early':
      return `waited ${secondsInWords(reason.ranS)} of ${secondsInWords(reason.neededS)}: run it again`;
    case 'clock-jumped':
      return 'the laptop’s clock moved: run it again';
    case 'tuning-running':
      return 'tuning run not finished';
    case 'tuning-interrupted':
      return `tuning run interrupted${reason.reason === null ? '' : ` (${reason.reason})`}: start it again`;
    case 'tuning-stages-missing':
      return 'tuning run: stages missing';
    case 'post-run-wait':
      return `wait after the tuning run: ${formatSeconds(reason.secondsLeft)} left`;
    case 'lapsed':
      return `${LAPSED[reason.lapse]}: older than ${reason.hours} h, do it again`;
    case 'part-changed-since':
      return `${reason.partLabel} changed since: run it again`;
    case 'adjusted-since':
      return 'adjusted since: read it again';
    case 'asked-for-part':
      return `asked because a part was changed: ${reason.partLabel}`;
    case 'stage-not-read':
      return `${quantitySpec(reason.quantity).label} not read at ${reason.stageKey.replaceAll('-', ' ')}`;
    case 'fault-open':
      return 'the fault stays open: end as return needed';
    case 'answered-no':
      return 'answered “no”';
    case 'option-needs-explanation':
      return 'needs its cause written down';
    case 'option-stop':
      return 'make safe';
    case 'not-an-option':
      return `“${reason.value}” is not one of the answers`;
    case 'differs-from-job':
      return `${FIELDS[reason.field]} “${reason.seen}”, the job says “${reason.onJob}”`;
    case 'fuel-mismatch':
      return `appliance for ${fuelWords(reason.appliance)}, site burns ${fuelWords(reason.site)}, no conversion with kit, orifice and photo on record`;
    case 'plate-for-other-fuel':
      return `the plate is for ${fuelWords(reason.plate)}, the site burns ${fuelWords(reason.site)}: that is a conversion`;
    case 'not-licensed':
      return `${reason.name} holds no valid licence for this`;
    case 'witness-did-the-work':
      return `${reason.name} did the work: somebody else must confirm it`;
    case 'open-make-safe':
      return reason.count === 1 ? 'a make-safe is open' : `${reason.count} make-safes are open`;
    case 'open-notice':
      return `${noticeName(reason.notice)} is not settled`;
    case 'plate-fuel-unknown':
      return 'fuel on the data plate not known';
    case 'rating-unknown':
      return `rated input on the plate not known, and the licence of ${reason.names.join(' and ')} has an upper limit`;
    case 'fuel-not-on-sheet':
      return `the sheet does not cover ${fuelWords(reason.fuel)}`;
    case 'finding':
      return findingWords(reason);
    default:
      return assertNever(reason);
  }
}

export function blockerWords(blocker: ProgressBlocker, source: WordSource): string {
  // Beside a stop nothing else is to be done yet.
  const stop = blocker.because.find(saysStop);
  if (stop !== undefined) return reasonWords(stop, source);
  // In a list of what is open, "not answered" says nothing.
  const words = blocker.because
    .filter((reason) => reason.code !== 'not-answered' && reason.code !== 'too-few-samples')
    .map((reason) => reasonWords(reason, source));
  // A burner that is not there yet has no samples: that goes without saying.
  const isReached = blocker.because.every((reason) => reason.code !== 'firing-point-not-reached');
  if (isReached) words.push(...samplesWords(blocker.because, source));
  // That it is too old is said once, with after how long.
  const isLapsed = blocker.because.some((reason) => reason.code === 'lapsed');
  const tooLongAgo = proofWords('hold-lapsed');
  return [...new Set(words)].filter((one) => !(isLapsed && one === tooLongAgo)).join('; ');
}

function saysStop(reason: ProgressBlocker['because'][number]): boolean {
  return reason.code === 'option-stop' || (reason.code === 'finding' && reason.finding.verdict === 'stop');
}

/** Columns that lack the same are said at once; each by its name only where they differ. */
function samplesWords(because: ProgressBlocker['because'], source: WordSource): readonly string[] {
  const lacking = because.filter((reason) => reason.code === 'too-few-samples');
  const [first, ...others] = lacking;
  const isAlike = others.length > 0 && others.every(({ have, need }) => have === first?.have && need === first.need);
  return first !== undefined && isAlike
    ? [`${first.have} of ${first.need} samples`]
    : lacking.map((reason) => reasonWords(reason, source));
}

/** What the blocker is about: the item's label, or the step's title, or the run as a whole. */
export function blockerSubject(blocker: ProgressBlocker, source: WordSource): string {
  if (blocker.itemKey !== null) return itemLabel(blocker.itemKey, source);
  if (blocker.stepKey !== null) return stepTitle(blocker.stepKey, source);
  return 'This appliance';
}

export function lockWords(lock: StepLock, source: WordSource): string {
  return lock.code === 'step-first'
    ? `First finish “${stepTitle(lock.stepKey, source)}”.`
    : `Hold point before ${BLOCKED[lock.block]}: ${lock.blockers.length} open.`;
}

export function blockWords(block: Block): string {
  return BLOCKED[block];
}

export function itemLabel(itemKey: string, source: WordSource): string {
  return findItem(itemKey, source.steps)?.label ?? itemKey.replaceAll('-', ' ');
}

export function stepTitle(stepKey: string, source: WordSource): string {
  return source.steps.find((step) => step.key === stepKey)?.title ?? stepKey.replaceAll('-', ' ');
}

export function fuelWords(fuel: FuelKey): string {
  return FUEL_WORDS[fuel];
}

function findItem(itemKey: string, steps: readonly SheetStep[]): StepItem | undefined {
  return steps.flatMap((step) => step.items).find((item) => item.key === itemKey);
}

function findingWords({ finding }: Extract<ItemReason, { code: 'finding' }>): string {
  if (finding.verdict === 'cannot-judge') return `can’t judge: ${finding.missing.join(', ') || 'something is missing'}`;
  if (!finding.proof.proven && finding.verdict !== 'outside' && finding.verdict !== 'stop') {
    return finding.proof.because.map(proofWords).join('; ');
  }
  // Outside with nothing to be outside of: what would settle it is all there is to say.
  if (finding.basis.limit === null && finding.missing.length > 0) return `missing: ${finding.missing.join(', ')}`;
  return verdictWords(finding.verdict);
}

const BLOCKED: Record<Block, string> = { firing: 'firing', leaving: 'leaving', registration: 'registration' };
const FUEL_WORDS: Record<FuelKey, string> = {
  'natural-gas': 'natural gas',
  propane: 'propane (LP)',
  butane: 'butane (LP)',
  'heating-oil': 'heating oil',
};
const LAPSED: Record<LapseKind, string> = {
  tightness: 'tightness test',
  roomCo: 'CO in the room',
  analyserZero: 'analyser check',
  pressure: 'pressure',
};
const FIELDS = { serial: 'serial number', 'plate-fuel': 'plate says', 'tag-fuel': 'tag says' } as const;
