/**
 * What all appliances together ask of the meter.
 *
 * Formula  rate = Σ input · 3.6 / heating value; capacity = m³/h · heating value / 3.6; share = load / capacity
 * Units    kW gross, MJ/m³ gross, m³/h
 * Source   arithmetic
 */
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

export type ConnectedGasLoad = {
  readonly loadKw: number;
  /** What the meter lets through, as heat. */
  readonly capacityKw: number;
  readonly rateM3PerH: number;
  readonly sharePct: number;
  readonly isOverCapacity: boolean;
};

const MJ_PER_KWH = 3.6;

/** Of the loads that are known: with others it is at least that. */
export function connectedGasLoad(input: {
  readonly loadsKwGross: readonly number[];
  readonly heatingValueMjPerM3: number;
  readonly meterCapacityM3PerH: number;
}): Result<ConnectedGasLoad, OutOfRange> {
  const { heatingValueMjPerM3, meterCapacityM3PerH } = input;
  const loadKw = input.loadsKwGross.reduce((sum, load) => sum + load, 0);
  const refused =
    checkRange('loadsKwGross', loadKw, 0, 100_000) ??
    checkRange('heatingValueMjPerM3', heatingValueMjPerM3, 1, 200) ??
    checkRange('meterCapacityM3PerH', meterCapacityM3PerH, 0.5, 100_000);
  if (refused) return err(refused);
  const capacityKw = (meterCapacityM3PerH * heatingValueMjPerM3) / MJ_PER_KWH;
  const sharePct = (100 * loadKw) / capacityKw;
  const rateM3PerH = (loadKw * MJ_PER_KWH) / heatingValueMjPerM3;
  return ok({ loadKw, capacityKw, rateM3PerH, sharePct, isOverCapacity: sharePct > 100 });
}
