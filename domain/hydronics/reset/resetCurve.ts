import type { Celsius, KelvinDifference } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';
import { bisect } from '../bisect.ts';

/** An emitter circuit at its design day. */
export type ResetDesign = {
  readonly designSupplyC: Celsius;
  readonly designReturnC: Celsius;
  readonly designRoomC: Celsius;
  readonly designOutdoorC: Celsius;
  /** Radiators 1.3, baseboard and convectors 1.3–1.4, floors 1.1; with 1 the curve is a line and underheats at part load. */
  readonly exponent: number;
  /** Kelvins of outdoor temperature that people, sun and appliances are worth; 0 if unknown. */
  readonly internalGainK?: KelvinDifference;
};

/**
 * Supply temperature that matches an emitter to the weather. Warm-weather shutdown and a minimum supply are clamps of the
 * control, not points of this curve.
 *
 * Formula  q = max(0, [Ti − (To + g)]/[TiN − (ToN + g)]);
 *          Ts = Ti + [(TsN + TrN)/2 − TiN]·q^(1/n) + ½(TsN − TrN)·q; Tr = Ts − q(TsN − TrN)
 * Units    °C, K; °C, share of the design load
 * Valid    steady weather, constant flow, one emitter type, load in step with Ti − To; design supply up to 120 °C, above
 *          return above room, exponent 1–1.5, outdoor −60 to 50 °C, gain 0–20 K and less than the design difference,
 *          result up to 120 °C; outside it an error, never a number
 * Source   supply and return set-point reset of an open Modelica buildings library
 * Checked  tests/checks/hydronics/resetRows.ts R1–R9
 */
export function resetCurve(
  point: ResetDesign & { readonly outdoorC: Celsius; readonly roomC?: Celsius },
): Result<ResetPoint, OutOfRange> {
  const { designRoomC, designOutdoorC, outdoorC, roomC = designRoomC, internalGainK = 0 } = point;
  const refused = checkDesign(point) ?? checkRange('outdoorC', outdoorC, -60, 50) ?? checkRange('roomC', roomC, 5, 35);
  if (refused) return err(refused);
  const loadShare = Math.max(
    0,
    (roomC - (outdoorC + internalGainK)) / (designRoomC - (designOutdoorC + internalGainK)),
  );
  const water = waterAtLoad({ design: point, roomC, loadShare });
  const refusedSupply = checkRange('supplyC', water.supplyC, 0, 120);
  return refusedSupply ? err(refusedSupply) : ok({ loadShare, ...water });
}

export type ResetPoint = { readonly loadShare: number; readonly supplyC: Celsius; readonly returnC: Celsius };

/**
 * Outdoor temperature above which the return stays below a temperature, for instance where condensing begins.
 *
 * Formula  inverse of `resetCurve` at the design room, by bisection of the load share
 * Units    °C
 * Valid    as `resetCurve`, and the return must rise with the load, as it does in any usual design;
 *          outside it an error, never an answer
 * Source   as `resetCurve`
 * Checked  tests/checks/hydronics/resetRows.ts R11
 */
export function outdoorForReturn(
  wish: ResetDesign & { readonly returnBelowC: Celsius },
): Result<ReturnBelow, OutOfRange> {
  const { designSupplyC, designReturnC, designRoomC, designOutdoorC, exponent, internalGainK = 0, returnBelowC } = wish;
  const refused = checkDesign(wish) ?? checkRange('returnBelowC', returnBelowC, 0, 120);
  if (refused) return err(refused);
  // The return's slope is least at full load; below zero there, one return could belong to two loads.
  const slopeAtFullLoad =
    ((designSupplyC + designReturnC) / 2 - designRoomC) / exponent - (designSupplyC - designReturnC) / 2;
  const refusedSlope = checkRange('returnSlopeAtFullLoad', slopeAtFullLoad, 0, null);
  if (refusedSlope) return err(refusedSlope);
  if (returnBelowC >= designReturnC) return ok({ kind: 'down-to-the-design-day' });
  if (returnBelowC <= designRoomC) return ok({ kind: 'never' });
  const loadShare = bisect({
    low: 0,
    high: 1,
    isBelow: (share) => waterAtLoad({ design: wish, roomC: designRoomC, loadShare: share }).returnC < returnBelowC,
  });
  const outdoorC = designRoomC - internalGainK - loadShare * (designRoomC - (designOutdoorC + internalGainK));
  return ok({ kind: 'above', outdoorC });
}

export type ReturnBelow =
  | { readonly kind: 'above'; readonly outdoorC: Celsius }
  | { readonly kind: 'down-to-the-design-day' }
  | { readonly kind: 'never' };

function waterAtLoad(at: { readonly design: ResetDesign; readonly roomC: Celsius; readonly loadShare: number }): {
  readonly supplyC: Celsius;
  readonly returnC: Celsius;
} {
  const { designSupplyC, designReturnC, designRoomC, exponent } = at.design;
  const designMeanOverRoomK = (designSupplyC + designReturnC) / 2 - designRoomC;
  const designDeltaTK = designSupplyC - designReturnC;
  const supplyC = at.roomC + designMeanOverRoomK * at.loadShare ** (1 / exponent) + 0.5 * designDeltaTK * at.loadShare;
  return { supplyC, returnC: supplyC - at.loadShare * designDeltaTK };
}

function checkDesign(design: ResetDesign): OutOfRange | null {
  const { designSupplyC, designReturnC, designRoomC, designOutdoorC, exponent, internalGainK = 0 } = design;
  return (
    checkRange('designRoomC', designRoomC, 5, 35) ??
    checkRange('designReturnC', designReturnC, designRoomC + 0.5, null) ??
    checkRange('designSupplyC', designSupplyC, designReturnC, 120) ??
    checkRange('internalGainK', internalGainK, 0, 20) ??
    checkRange('designOutdoorC', designOutdoorC, -60, designRoomC - internalGainK - 1) ??
    checkRange('exponent', exponent, 1, 1.5)
  );
}
