/**
 * What is physically so at one boiler on one visit: every number follows from a few free ones through combustion and
 * hydronics, before any instrument or person adds an error. The judgement has no part in it.
 */
import { SITE_FUELS } from '../../../domain/combustion/fuels.ts';
import { co2FromO2, o2FromCo2 } from '../../../domain/combustion/o2Co2.ts';
import type { ModelSheet } from '../../../domain/procedure/modelSheet.ts';
import { unwrap } from '../../../domain/result.ts';
import type { Random } from './random.ts';

export type BoilerFacts = {
  readonly sheet: ModelSheet;
  readonly fuel: 'natural-gas' | 'propane';
  readonly ratedInputKw: number;
  readonly heatingValueMjPerM3: number;
  readonly systemHeightM: number;
  readonly reliefBarG: number;
  readonly hasFloor: boolean;
  readonly hotWater: 'none' | 'combi' | 'cylinder';
  /** Own bias of this boiler against the middle of the sheet, in CO₂ points. */
  readonly co2Bias: number;
};

export type VisitTruth = {
  /** By quantity and point, in the quantity's own unit. */
  readonly at: (quantity: string, point: string | null) => number | null;
};

/** Years since startup make a boiler drift: leaner, a little more CO, a warmer flue, less water. */
export function visitTruth(facts: BoilerFacts, years: number, monthOfYear: number, random: Random): VisitTruth {
  const fuel = SITE_FUELS[facts.fuel];
  const outdoorC = 8 - 14 * Math.cos(((monthOfYear - 1) / 12) * 2 * Math.PI) + random.noise(3);
  const returnHighC = facts.hasFloor ? random.between(28, 33) : random.between(38, 46);
  const deltaHighK = facts.hasFloor ? random.between(6, 9) : random.between(13, 18);
  const coldBarG = Math.min(1.5, Math.max(0.95, facts.systemHeightM * 0.098 + 0.3)) - 0.04 * years;
  const nominalMbar = facts.fuel === 'propane' ? 30 : 18.8;
  const staticMbar = nominalMbar + random.noise(0.3);
  const targets = new Map(facts.sheet.firingPoints.map((point) => [point.key, targetCo2(facts, point.key)]));
  const values = new Map<string, number>();
  const set = (quantity: string, point: string | null, value: number): void =>
    void values.set(`${quantity}@${point ?? ''}`, value);

  const points = facts.sheet.firingPoints.map((point) => point.key);
  for (const point of points) {
    const share = point === 'high' ? 1 : point === 'mid' ? 0.6 : 0.2;
    const co2 = (targets.get(point) ?? 9) + facts.co2Bias - 0.08 * years;
    const o2 = unwrap(o2FromCo2({ fuel, co2DryVolPct: co2 }));
    const returnC = returnHighC - 2 * (1 - share);
    set('o2DryVolPct', point, o2);
    set('co2DryVolPct', point, unwrap(co2FromO2({ fuel, o2DryVolPct: o2 })));
    set('coPpm', point, 8 + 34 * share ** 2 + 4 * years);
    set('flueGasC', point, returnC + 2 + 6 * share + 1.2 * years);
    set('returnC', point, returnC);
    set('supplyC', point, returnC + deltaHighK * (0.35 + 0.65 * share));
    set('intakeAirC', point, Math.max(4, outdoorC));
  }
  const gasM3PerH = (facts.ratedInputKw * 3.6) / facts.heatingValueMjPerM3;
  const dialM3 = facts.ratedInputKw > 60 ? 0.1 : 0.01;
  const turns = Math.max(2, Math.ceil((gasM3PerH / dialM3 / 3600) * 90));
  set('meterDialM3', null, dialM3);
  set('meterTurns', null, turns);
  set('meterSeconds', null, ((turns * dialM3) / gasM3PerH) * 3600);
  set('heatingValueMjPerM3', null, facts.heatingValueMjPerM3);
  set('inletPressureMbarG', 'static', staticMbar);
  set('inletPressureMbarG', 'static-upstream', staticMbar + 1);
  set('inletPressureMbarG', 'dynamic', staticMbar - 0.8);
  set('inletPressureMbarG', 'dynamic-all-on', staticMbar - 1.4);
  set('burnerPressureMbarG', 'high', -0.07);
  set('tightnessPressureMbarG', 'test', 100);
  set('tightnessMinutes', 'test', 15);
  set('tightnessDropMbar', 'test', 0);
  set('roomCoPpm', 'before', 0);
  set('roomCoPpm', 'firing', 0);
  set('freshAirO2VolPct', null, 20.9);
  set('freshAirCo2VolPct', null, 0.04);
  set('freshAirCoPpm', null, 0);
  set('intakeO2VolPct', null, 20.9);
  set('systemPressureBarG', 'cold', coldBarG);
  set('systemPressureBarG', 'after-purge', coldBarG);
  set('systemPressureBarG', 'hot', coldBarG + 0.3);
  set('vesselPreChargeBarG', null, Math.max(0.75, coldBarG - 0.2));
  set('reliefSettingBarG', null, facts.reliefBarG);
  set('waterPh', 'before', 7.3);
  set('waterPh', 'after', 7.9 + 0.1 * years);
  set('hardnessMmolPerL', 'before', 0.9);
  set('hardnessMmolPerL', 'after', 0.9);
  set('conductivityUsPerCm', 'before', 210);
  set('conductivityUsPerCm', 'after', 430 + 25 * years);
  set('chlorideMgPerL', 'after', 35);
  set('inhibitorPct', 'after', 1.1 - 0.1 * years);
  set('glycolPct', 'after', 30);
  set('supplyVoltageV', null, 120 + random.noise(1));
  set('condensatePouredL', null, 0.5);
  set('condensateOutletPh', null, 6.8);
  set('flameCurrentUa', null, 7 - 0.3 * years);
  set('ignitionTries', null, 1);
  set('cleanStarts', null, 5);
  set('fanSpeedRpm', 'low', 1450);
  set('fanSpeedRpm', 'ignition', 2900);
  // As many joints as the vent with the most elbows has at least.
  set('ventPhotos', null, 5);
  set('inspectionHatches', null, 2);
  set('tankFillPct', null, random.between(38, 80));
  set('supplySetpointC', null, facts.hasFloor ? 40 : 55);
  set('manifoldSupplyC', null, 38);
  set('floorSurfaceC', null, 25.5);
  set('resetDesignOutdoorC', null, -15);
  set('resetDesignSupplyC', null, facts.hasFloor ? 42 : 58);
  set('resetMildOutdoorC', null, 18);
  set('resetMildSupplyC', null, facts.hasFloor ? 24 : 30);
  set('warmWeatherShutdownC', null, 19);
  set('outdoorC', null, outdoorC);
  set('displayOutdoorC', null, outdoorC + random.noise(0.6));
  set('supplyC', 'hot', returnHighC + deltaHighK);
  set('systemFlowLPerMin', null, (facts.ratedInputKw * 0.88) / (0.0693 * deltaHighK));
  set('coldInletC', null, 8 + random.noise(1));
  set('hotOutletC', null, 47 + random.noise(0.5));
  set('mixedOutletC', null, 45 + random.noise(0.5));
  set('hotWaterFlowLPerMin', null, (facts.ratedInputKw * 0.9) / (0.0697 * 39));
  set('hotWaterFlowLPerMin', 'minimum', 2.2);
  set('storeC', null, 62);
  return { at: (quantity, point) => values.get(`${quantity}@${point ?? ''}`) ?? values.get(`${quantity}@`) ?? null };
}

/** Where the sheet wants this point: the middle of its CO₂ band, or of the band that other sheets show. */
function targetCo2(facts: BoilerFacts, point: string): number {
  const band = facts.sheet.limits.find(
    (limit) =>
      limit.quantity === 'co2DryVolPct' &&
      (limit.point === point || limit.point === null) &&
      (limit.fuel === null || limit.fuel === facts.fuel) &&
      limit.min !== undefined &&
      limit.max !== undefined,
  );
  if (band?.min !== undefined && band.max !== undefined) return (band.min + band.max) / 2;
  return facts.fuel === 'propane' ? 10.3 : 9.1;
}
