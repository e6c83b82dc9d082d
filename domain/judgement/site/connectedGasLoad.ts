/**
 * What all appliances together ask of the meter.
 *
 * Formula  rate = Σ input · 3.6 / heating value; share = rate / capacity
 * Units    kW gross, MJ/m³ gross, m³/h
 * Source   arithmetic
 */
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

export type ConnectedGasLoad = {
  readonly rateM3PerH: number;
  readonly sharePct: number;
  readonly isOverCapacity: boolean;
};

export function connectedGasLoad(input: {
  readonly loadsKwGross: readonly number[];
  readonly heatingValueMjPerM3: number;
  readonly meterCapacityM3PerH: number;
}): Result<ConnectedGasLoad, OutOfRange> {
  const totalKw = input.loadsKwGross.reduce((sum, load) => sum + load, 0);
  const refused =
    checkRange('loadsKwGross', totalKw, 0, 100_000) ??
    checkRange('heatingValueMjPerM3', input.heatingValueMjPerM3, 1, 200) ??
    checkRange('meterCapacityM3PerH', input.meterCapacityM3PerH, 0.5, 100_000);
  if (refused) return err(refused);
  const rateM3PerH = (totalKw * 3.6) / input.heatingValueMjPerM3;
  const sharePct = (100 * rateM3PerH) / input.meterCapacityM3PerH;
  return ok({ rateM3PerH, sharePct, isOverCapacity: sharePct > 100 });
}
