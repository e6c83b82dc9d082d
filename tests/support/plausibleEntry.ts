/**
 * Numbers that a healthy installation would show on a given sheet: the middle of what the sheet allows, and for
 * everything else what is common. No published values: they are there to walk a whole run through the judgement.
 */

import { SITE_FUELS } from '../../domain/combustion/fuels.ts';
import type { FuelKey, ModelSheet } from '../../domain/procedure/modelSheet.ts';
import type { RecordedInstrument } from '../../domain/procedure/runRecord.ts';
import type { QuantityKey } from '../../domain/quantity/quantities.ts';
import { calibratedUntil } from './calibratedUntil.ts';

/** One instrument for everything, in date, with the accuracy that handhelds of the trade state. */
export const HEALTHY_INSTRUMENT: RecordedInstrument = {
  instrumentId: 'kit',
  label: 'Kit',
  serial: 'K-1',
  kind: 'other',
  calibrations: calibratedUntil('2027-01-31'),
  accuracy: {
    o2DryVolPct: { abs: 0.2, relPct: 0 },
    co2DryVolPct: { abs: 0.2, relPct: 0 },
    coPpm: { abs: 3, relPct: 5 },
    flueGasC: { abs: 0.5, relPct: 0.5 },
    inletPressureMbarG: { abs: 0.1, relPct: 0.5 },
    tightnessDropMbar: { abs: 0.02, relPct: 0 },
  },
  rangeMax: { coPpm: 4000 },
};

const USUAL: Readonly<Partial<Record<QuantityKey, number>>> = {
  coPpm: 18,
  intakeAirC: 14,
  freshAirO2VolPct: 20.9,
  freshAirCo2VolPct: 0.04,
  freshAirCoPpm: 0,
  roomCoPpm: 1,
  intakeO2VolPct: 20.9,
  tightnessPressureMbarG: 50,
  tightnessDropMbar: 0,
  tightnessMinutes: 15,
  tankFillPct: 62,
  vesselPreChargeBarG: 0.9,
  reliefSettingBarG: 3,
  systemFlowLPerMin: 14,
  floorSurfaceC: 25,
  manifoldSupplyC: 38,
  outdoorC: 6,
  displayOutdoorC: 7,
  resetDesignOutdoorC: -12,
  resetMildOutdoorC: 18,
  resetMildSupplyC: 30,
  warmWeatherShutdownC: 18,
  coldInletC: 10,
  hotOutletC: 50,
  mixedOutletC: 44,
  storeC: 63,
  hardnessMmolPerL: 0.6,
  conductivityUsPerCm: 420,
  chlorideMgPerL: 25,
  inhibitorPct: 1.1,
  glycolPct: 25,
  supplyVoltageV: 231,
  flameCurrentUa: 12,
  ignitionTries: 1,
  cleanStarts: 5,
  fanSpeedRpm: 3200,
  condensatePouredL: 0.4,
  condensateOutletPh: 7.1,
  ventPhotos: 4,
  inspectionHatches: 1,
  meterDialM3: 0.01,
  meterTurns: 5,
};

/** At each point a number of its own, as on a real installation. */
const AT_POINT: Readonly<Record<string, Readonly<Partial<Record<QuantityKey, number>>>>> = {
  high: { flueGasC: 62, supplyC: 68, returnC: 55, coPpm: 24 },
  mid: { flueGasC: 61, supplyC: 66.5, returnC: 54.5, coPpm: 19, intakeAirC: 13 },
  low: { flueGasC: 59, supplyC: 63, returnC: 53.5, coPpm: 14, intakeAirC: 12.5 },
  hot: { supplyC: 69 },
  firing: { roomCoPpm: 2 },
  minimum: { hotWaterFlowLPerMin: 2.2 },
  'static-upstream': { inletPressureMbarG: 60 },
};

const PRESSURE_STEPS: Readonly<Record<string, number>> = { static: 0, dynamic: -0.8, 'dynamic-all-on': -1.4 };

export function plausibleEntry(sheet: ModelSheet, fuel: FuelKey, ratedInputKwGross: number) {
  return (quantity: QuantityKey, point: string | null): number => {
    const atPoint = point === null ? undefined : AT_POINT[point]?.[quantity];
    if (atPoint !== undefined) return atPoint;
    switch (quantity) {
      case 'co2DryVolPct':
        return co2(sheet, fuel, point);
      case 'o2DryVolPct':
        return round(20.946 * (1 - co2(sheet, fuel, point) / SITE_FUELS[fuel].co2MaxDryVolPct), 1);
      case 'inletPressureMbarG':
        return round(middle(sheet, fuel, quantity, 'static', 22) + (PRESSURE_STEPS[point ?? ''] ?? 0), 1);
      case 'systemPressureBarG': {
        const cold = middle(sheet, fuel, quantity, 'cold', 1.2);
        return round(point === 'hot' ? cold + 0.35 : cold, 2);
      }
      case 'supplySetpointC':
      case 'resetDesignSupplyC':
        return 53;
      case 'heatingValueMjPerM3':
        return heatingValue(fuel);
      case 'meterSeconds':
        return round((3600 * 5 * 0.01 * heatingValue(fuel)) / (3.6 * ratedInputKwGross), 1);
      case 'waterPh':
        return round(middle(sheet, fuel, quantity, 'after', 8), 1);
      case 'burnerPressureMbarG':
        return middle(sheet, fuel, quantity, point, 0);
      case 'hotWaterFlowLPerMin':
        return 9.5;
      default: {
        const usual = USUAL[quantity];
        if (usual === undefined) throw new Error(`no plausible value for ${quantity} at ${point ?? 'no point'}`);
        return usual;
      }
    }
  };
}

function co2(sheet: ModelSheet, fuel: FuelKey, point: string | null): number {
  return round(middle(sheet, fuel, 'co2DryVolPct', point, 9), 1);
}

/** As metered: 38.6 and 95.2 MJ/m³ are typical of pipeline gas and of commercial propane. */
function heatingValue(fuel: FuelKey): number {
  return fuel === 'natural-gas' ? 38.6 : 95.2;
}

function middle(sheet: ModelSheet, fuel: FuelKey, quantity: QuantityKey, point: string | null, otherwise: number) {
  const limit = sheet.limits.find(
    (one) =>
      one.quantity === quantity &&
      (one.point === null || one.point === point) &&
      (one.fuel === null || one.fuel === fuel) &&
      one.severity === 'outside',
  );
  if (limit?.min === undefined) return otherwise;
  return limit.max === undefined ? limit.min * 1.15 : (limit.min + limit.max) / 2;
}

function round(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
