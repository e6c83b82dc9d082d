/** What shuts a gate without any item being to blame: a make-safe or a notice still open, a fuel that does not fit, a finding on the whole run. */
import { stoppingNotices } from '../../recalls/openNotices.ts';
import { plateFuelOf } from '../conversion.ts';
import type { Block, SheetStep } from '../modelSheet.ts';
import type { RunProgressInput, RunReason } from '../progressTypes.ts';
import type { RunRecord } from '../runRecord.ts';
import type { OpenFinding } from './findingsByItem.ts';
import { isBefore } from './instants.ts';
import type { RecordByItem } from './recordByItem.ts';

export type RunBlocker = { readonly blocks: readonly Block[]; readonly reason: RunReason };

const EVERYTHING: readonly Block[] = ['firing', 'leaving', 'registration'];

export function runBlockers(
  input: RunProgressInput,
  steps: readonly SheetStep[],
  byItem: RecordByItem,
  findings: readonly OpenFinding[],
): readonly RunBlocker[] {
  const { record, sheet } = input;
  const blockers: RunBlocker[] = [];
  if (record.openMakeSafes > 0) {
    blockers.push({ blocks: EVERYTHING, reason: { code: 'open-make-safe', count: record.openMakeSafes } });
  }
  for (const notice of stoppingNotices(record.openNotices)) {
    blockers.push({ blocks: EVERYTHING, reason: { code: 'open-notice', notice } });
  }
  const fuelProblem = plateProblem(input, steps, byItem);
  if (fuelProblem !== null) blockers.push({ blocks: ['firing', 'registration'], reason: fuelProblem });
  if (record.site.fuel !== null && record.site.fuel !== record.fuel) {
    const reason = { code: 'fuel-mismatch', appliance: record.fuel, site: record.site.fuel } as const;
    blockers.push({ blocks: EVERYTHING, reason });
  }
  const ratingProblem = unknownRating(input);
  if (ratingProblem !== null) blockers.push({ blocks: ['firing'], reason: ratingProblem });
  if (!sheet.fuels.some((one) => one.fuel === record.fuel)) {
    blockers.push({ blocks: EVERYTHING, reason: { code: 'fuel-not-on-sheet', fuel: record.fuel } });
  }
  for (const open of findings) {
    blockers.push({ blocks: blocksOfRunFinding(open, input), reason: { code: 'finding', finding: open.finding } });
  }
  return blockers;
}

/** The plate as seen on this run, or else as known of the appliance, must fit the fuel here or have a conversion on record. */
function plateProblem(input: RunProgressInput, steps: readonly SheetStep[], byItem: RecordByItem): RunReason | null {
  const { appliance, fuel } = input.record;
  const plateFuel = plateFuelOf(steps, byItem);
  if (plateFuel === null) return { code: 'plate-fuel-unknown' };
  if (plateFuel === fuel || appliance.hasConversionRecord) return null;
  return { code: 'fuel-mismatch', appliance: plateFuel, site: fuel };
}

/**
 * Whoever works here under a licence with an upper limit lights nothing before the plate's rating is known, unless somebody
 * with a licence for every size works here too.
 */
function unknownRating({ record, people, reopenedAt }: RunProgressInput): RunReason | null {
  const there = peopleAtWork(record, reopenedAt ?? null);
  const licensed = (people ?? []).filter((one) => one.isLicensed && there.has(one.staffId));
  const waiting = licensed.filter((one) => one.waitsForRating === true);
  if (waiting.length === 0 || waiting.length < licensed.length) return null;
  return { code: 'rating-unknown', names: waiting.map((one) => one.name) };
}

/** Those who answered, measured or signed since the run was last taken up. */
function peopleAtWork(record: RunRecord, sinceIso: string | null): ReadonlySet<string> {
  const done = [
    ...record.answers.map(({ byId, at }) => ({ byId, at })),
    ...record.readings.map(({ measuredById, measuredAt }) => ({ byId: measuredById, at: measuredAt })),
    ...record.signOffs.map(({ staffId, at }) => ({ byId: staffId, at })),
  ];
  return new Set(
    done.flatMap(({ byId, at }) => (byId === null || (sinceIso !== null && isBefore(at, sinceIso)) ? [] : [byId])),
  );
}

function blocksOfRunFinding(open: OpenFinding, input: RunProgressInput): readonly Block[] {
  const blocks = open.finding.verdict === 'stop' ? EVERYTHING : open.finding.blocks;
  const releasedAt = input.firingReleasedAt ?? null;
  const isReleased = open.readAt !== null && releasedAt !== null && isBefore(open.readAt, releasedAt);
  return isReleased ? blocks.filter((block) => block !== 'firing') : blocks;
}
