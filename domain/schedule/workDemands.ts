/** What a sheet asks of whoever goes to a job: what its steps are read with, and whether its maker insists on a course. */
import { instrumentKindFor } from '../judgement/proof/instrumentKindFor.ts';
import { NEEDS_INSTRUMENT } from '../judgement/quantityGroups.ts';
import type { ModelSheet, SheetStep, StepItem } from '../procedure/modelSheet.ts';
import type { RunRecord } from '../procedure/runRecord.ts';
import { stepListOf, stepsOfList } from '../procedure/stepListOf.ts';
import type { QuantityKey } from '../quantity/quantities.ts';
import type { InstrumentKind } from '../vocabulary/people.ts';

export type WorkDemands = {
  /** Without one of each in calibration on the day, readings of the job prove nothing. */
  readonly instruments: readonly InstrumentKind[];
  /** The maker's sheet says so of a startup; otherwise it is preferred, and said. */
  readonly insistsOnTraining: boolean;
  readonly insistsOnInstruments: boolean;
};

/** Where no sheet is known yet: common practice, no source, nobody judges a burner without an analyser. */
export const DEMANDS_WITHOUT_SHEET: WorkDemands = {
  instruments: ['analyser'],
  insistsOnTraining: false,
  insistsOnInstruments: false,
};

export function workDemandsOf(kind: RunRecord['kind'], sheet: ModelSheet): WorkDemands {
  const { startupBy } = sheet;
  return {
    instruments: instrumentsOf(stepsOfList(sheet, stepListOf(kind, sheet))),
    insistsOnTraining: kind === 'startup' && startupBy?.training !== undefined,
    insistsOnInstruments: kind === 'startup' && startupBy?.instruments !== undefined,
  };
}

function instrumentsOf(steps: readonly SheetStep[]): readonly InstrumentKind[] {
  const kinds = steps
    .flatMap((step) => step.items.flatMap(quantitiesOf))
    .filter((quantity) => NEEDS_INSTRUMENT.has(quantity))
    .flatMap((quantity) => instrumentKindFor(quantity) ?? []);
  return [...new Set(kinds)].sort();
}

function quantitiesOf(item: StepItem): readonly QuantityKey[] {
  if (item.kind === 'read') return [item.quantity];
  return item.kind === 'series' ? item.quantities : [];
}
