/**
 * What is physically so at one boiler on one visit: every number follows from a few free ones through combustion and
 * hydronics, before any instrument or person adds an error. The judgement has no part in it.
 */
import { SITE_FUELS } from '../../../domain/combustion/fuels.ts';
import { co2FromO2, o2FromCo2 } from '../../../domain/combustion/o2Co2.ts';
import type { EmitterKind, ModelSheet } from '../../../domain/procedure/modelSheet.ts';
import { unwrap } from '../../../domain/result.ts';
import type { Random } from './random.ts';

export type BoilerFacts = {
  readonly sheet: ModelSheet;
  readonly fuel: 'natural-gas' | 'propane';
  /** As on the plate. */
  readonly ratedInputKw: number;
  /** As the gas meter sees it. */
  readonly inputKwGross: number;
  /** To the water at high fire. */
  readonly outputKw: number;
  readonly heatingValueMjPerM3: number;
  readonly nominalMbarG: number;
  /** null: a tank has no meter. */
  readonly meterDialM3: number | null;
  readonly systemHeightM: number;
  readonly reliefBarG: number;
  readonly emitters: readonly EmitterKind[];
  readonly hotWater: 'none' | 'combi' | 'cylinder';
  readonly vent: string;
  /** Own bias of this boiler against the middle of the sheet, in CO₂ points. */
  readonly co2Bias: number;
};

export type VisitTruth = {
  /** By quantity and point, in the quantity's own unit. */
  readonly at: (quantity: string, point: string | null) => number | null;
};

/** Return and spread at high fire, the setting, and the two ends of the reset curve, by emitter; common practice, no source. */
const WATER = {
  'floor-slab': { returnC: [28, 33], deltaK: [6, 9], settingC: 40, designC: 42, mildC: 24 },
  'panel-radiators': { returnC: [35, 40], deltaK: [12.5, 15], settingC: 53, designC: 54, mildC: 30 },
  'fan-coil': { returnC: [36, 41], deltaK: [12, 14], settingC: 55, designC: 58, mildC: 35 },
  'fin-tube-baseboard': { returnC: [56, 61], deltaK: [10.3, 11], settingC: 72, designC: 75, mildC: 45 },
  'old-radiators': { returnC: [56, 60], deltaK: [13, 16], settingC: 75, designC: 78, mildC: 45 },
} as const satisfies Partial<Record<EmitterKind, object>>;

/** Years since startup make a boiler drift: leaner, a little more CO, a warmer flue, less water. */
export function visitTruth(facts: BoilerFacts, years: number, monthOfYear: number, random: Random): VisitTruth {
  const fuel = SITE_FUELS[facts.fuel];
  const outdoorC = 8 - 14 * Math.cos(((monthOfYear - 1) / 12) * 2 * Math.PI) + random.noise(3);
  const water = WATER[hottestOf(facts.emitters)];
  const returnHighC = random.between(water.returnC[0], water.returnC[1]);
  const deltaHighK = random.between(water.deltaK[0], water.deltaK[1]);
  // Cast iron is kept out of condensing and its flue runs hot; the others cool it to a little above the return.
  const flueAboveReturnK =
    facts.sheet.appliance.exchanger === 'cast-iron' ? { low: 28, more: 26 } : { low: 2, more: 6 };
  const coldBarG = Math.min(1.5, Math.max(0.95, facts.systemHeightM * 0.098 + 0.3)) - 0.04 * years;
  const staticMbar = facts.nominalMbarG + random.noise(0.3);
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
    set('flueGasC', point, returnC + flueAboveReturnK.low + flueAboveReturnK.more * share + 1.2 * years);
    set('returnC', point, returnC);
    set('supplyC', point, returnC + deltaHighK * (0.35 + 0.65 * share));
    set('intakeAirC', point, Math.max(4, outdoorC));
  }
  if (facts.meterDialM3 !== null) {
    const gasM3PerH = (facts.inputKwGross * 3.6) / facts.heatingValueMjPerM3;
    const turns = Math.max(2, Math.ceil((gasM3PerH / facts.meterDialM3 / 3600) * 90));
    set('meterDialM3', null, facts.meterDialM3);
    set('meterTurns', null, turns);
    set('meterSeconds', null, ((turns * facts.meterDialM3) / gasM3PerH) * 3600);
  }
  set('heatingValueMjPerM3', null, facts.heatingValueMjPerM3);
  set('inletPressureMbarG', 'static', staticMbar);
  set('inletPressureMbarG', 'static-upstream', staticMbar + 1);
  set('inletPressureMbarG', 'dynamic', staticMbar - 0.8);
  set('inletPressureMbarG', 'dynamic-all-on', staticMbar - 1.4);
  set('burnerPressureMbarG', 'high', burnerPressureMbarG(facts.sheet));
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
  set('supplySetpointC', null, water.settingC);
  set('manifoldSupplyC', null, 38);
  set('floorSurfaceC', null, 25.5);
  set('resetDesignOutdoorC', null, -15);
  set('resetDesignSupplyC', null, water.designC);
  set('resetMildOutdoorC', null, 18);
  set('resetMildSupplyC', null, water.mildC);
  set('warmWeatherShutdownC', null, 19);
  set('outdoorC', null, outdoorC);
  set('displayOutdoorC', null, outdoorC + random.noise(0.6));
  set('supplyC', 'hot', returnHighC + deltaHighK);
  set('systemFlowLPerMin', null, facts.outputKw / (0.0693 * deltaHighK));
  set('coldInletC', null, 8 + random.noise(1));
  set('hotOutletC', null, 47 + random.noise(0.5));
  set('mixedOutletC', null, 45 + random.noise(0.5));
  set('hotWaterFlowLPerMin', null, facts.outputKw / (0.0697 * 39));
  set('hotWaterFlowLPerMin', 'minimum', 2.2);
  set('storeC', null, 62);
  return { at: (quantity, point) => values.get(`${quantity}@${point ?? ''}`) ?? values.get(`${quantity}@`) ?? null };
}

/** Of the circuit whose water is hottest: the boiler is set for it, cooler ones are mixed down. */
function hottestOf(emitters: readonly EmitterKind[]): keyof typeof WATER {
  const known = (Object.keys(WATER) as (keyof typeof WATER)[]).filter((one) => emitters.includes(one));
  const [hottest] = known.toSorted((one, other) => WATER[other].settingC - WATER[one].settingC);
  if (hottest === undefined) throw new Error(`nothing is known of the water of ${emitters.join(', ')}`);
  return hottest;
}

/** What the gas valve is set to before the burner: over the room for a blown burner, a little under it for a premix one. */
function burnerPressureMbarG(sheet: ModelSheet): number {
  const band = sheet.limits.find(({ quantity }) => quantity === 'burnerPressureMbarG');
  return band?.min === undefined || band.max === undefined ? -0.07 : (band.min + band.max) / 2;
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
