/** Which instruments can read a quantity: those of its kind first, and whether one must be named at all. */
import { calibrationOn } from '../../../domain/judgement/proof/calibrationOn.ts';
import { canRead, instrumentKindFor } from '../../../domain/judgement/proof/instrumentKindFor.ts';
import { NEEDS_INSTRUMENT } from '../../../domain/judgement/quantityGroups.ts';
import type { RecordedInstrument } from '../../../domain/procedure/runRecord.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';

export function instrumentChoices(
  quantity: QuantityKey,
  instruments: readonly RecordedInstrument[],
): readonly RecordedInstrument[] {
  const kind = instrumentKindFor(quantity);
  if (kind === null) return [];
  const able = instruments.filter((one) => canRead(one, quantity));
  return [...able.filter((one) => one.kind === kind), ...able.filter((one) => one.kind !== kind)];
}

/**
 * What is offered beside a number: nothing where no instrument of its kind is on the list and none must be named, because an
 * analyser says nothing about a stopwatch. One that is named already is always among them.
 */
export function worthNaming(
  quantity: QuantityKey,
  instruments: readonly RecordedInstrument[],
  namedId: string | null,
): readonly RecordedInstrument[] {
  const able = instrumentChoices(quantity, instruments);
  const named = instruments.filter((one) => one.instrumentId === namedId && !able.includes(one));
  const choices = [...able, ...named];
  const kind = instrumentKindFor(quantity);
  const saysSomething = mustNameInstrument(quantity) || instruments.some((one) => one.kind === kind);
  return saysSomething || choices.some((one) => one.instrumentId === namedId) ? choices : [];
}

/** A number that only an instrument can give. */
export function mustNameInstrument(quantity: QuantityKey): boolean {
  return NEEDS_INSTRUMENT.has(quantity);
}

export function isOutOfDate(instrument: RecordedInstrument, today: string): boolean {
  const calibration = calibrationOn(instrument.calibrations, today);
  return calibration !== null && calibration.dueOn < today;
}
