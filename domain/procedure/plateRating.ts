/** The rated input of the appliance a run is about, kW: of its file, else as it was read from the plate in the run. */
import type { RunRecord } from './runRecord.ts';

/** null: nobody knows it yet. */
export function plateRatingKw({ appliance, readings }: Pick<RunRecord, 'appliance' | 'readings'>): number | null {
  const read = readings.findLast(
    ({ quantity, supersededById, valueOwn }) =>
      quantity === 'ratedInputKw' && supersededById === null && valueOwn !== null,
  );
  return appliance.ratedInputKw ?? read?.valueOwn ?? null;
}
