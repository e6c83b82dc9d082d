/** Readings of a true site as a careful technician types them: instrument error, rounding to the display, his own units. */
import type { QuantityKey } from '../../domain/quantity/quantities.ts';
import { ACCURACY, type AccuracyClass, classLimit } from './accuracyClasses.ts';
import { aroundTheRun } from './aroundTheRun.ts';
import { type EnteredSet, type Entry, SETTLE_S } from './enteredSet.ts';
import type { Random } from './random.ts';
import { type FiringState, type TrueSite, trueSite } from './trueSite.ts';

type Unit = { readonly symbol: string; readonly from: (si: number) => number; readonly decimals: number };

const PER_PSI = 0.0689475729;
const PER_IN_WC = 2.4908891;
const plain = (symbol: string, decimals: number, perUnit = 1): Unit => ({
  symbol,
  from: (si) => si / perUnit,
  decimals,
});
const METRIC = {
  temperature: plain('°C', 1),
  gas: plain('mbar', 1),
  system: plain('bar', 2),
  power: plain('kW', 1),
  dial: plain('m³', 3),
  rate: plain('m³/h', 2),
  heat: plain('MJ/m³', 1),
};
const US = {
  temperature: { symbol: '°F', from: (si: number) => si * 1.8 + 32, decimals: 1 },
  gas: plain('in w.c.', 1, PER_IN_WC),
  system: plain('psi', 1, PER_PSI),
  power: plain('Btu/h', 0, 0.29307107e-3),
  dial: plain('ft³', 1, 0.0283168466),
  rate: plain('ft³/h', 1, 0.0283168466),
  heat: plain('Btu/ft³', 0, 1 / 26.8392),
};

export function cleanSet(random: Random): EnteredSet {
  const site = trueSite(random);
  const unitSystem = site.place === 'north-america' && random.chance(0.8) ? 'us' : 'metric';
  const units = unitSystem === 'us' ? US : METRIC;
  const mark = unitSystem === 'metric' && random.chance(0.4) ? ',' : '.';
  const measuresCo2 = random.chance(0.15);
  const analyserCo2MaxPct =
    site.fuel === 'natural-gas' ? random.pick([11.7, 11.8, 11.9, 12]) : random.pick([13.7, 13.8]);
  const meterCompensation = random.pick(['none', 'temperature', 'temperature-pressure']);
  const tuningFinishedAtS = 2400;
  const highReachedAtS = 2700;
  const lowReachedAtS = 3900;
  const write = (si: number, unit: Unit) => text(unit.from(si), unit.decimals, mark);
  const entries: Entry[] = [];
  const add = (
    quantity: QuantityKey,
    typed: string,
    unit: string,
    atS: number,
    where: Partial<Pick<Entry, 'point' | 'sample' | 'instrument' | 'itemKey' | 'stepKey'>> = {},
  ) => {
    const { point = null, sample = 1, instrument = null, stepKey = 'other' } = where;
    const itemKey = where.itemKey ?? `${quantity}-${point ?? 'any'}`;
    const id = `${quantity}@${point ?? ''}#${sample}`;
    entries.push({ id, quantity, point, sample, text: typed, unit, atS, instrument, itemKey, stepKey });
  };
  const read = (si: number, accuracy: AccuracyClass) => si + random.error(classLimit(accuracy, si));

  const analyser = { instrument: 'analyser' } as const;
  const manometer = { instrument: 'manometer' } as const;
  add('freshAirO2VolPct', text(20.9 + random.error(0.15), 1, mark), '%', 300, analyser);
  add('freshAirCoPpm', text(random.whole(0, 2), 0, mark), 'ppm', 310, analyser);
  add('roomCoPpm', text(site.roomCoPpm, 0, mark), 'ppm', 360, analyser);
  const gas = (quantity: QuantityKey, mbar: number, point: string, atS: number) =>
    add(quantity, write(read(mbar, ACCURACY.gasPressureMbar), units.gas), units.gas.symbol, atS, {
      point,
      ...manometer,
    });
  gas('inletPressureMbarG', site.staticMbar, 'static', 600);
  const bar = (quantity: QuantityKey, value: number, point: string | null, atS: number) =>
    add(quantity, write(read(value, ACCURACY.systemPressureBar), units.system), units.system.symbol, atS, { point });
  add('reliefSettingBarG', write(site.reliefBar, units.system), units.system.symbol, 840);
  bar('vesselPreChargeBarG', site.preChargeBar, null, 900);
  bar('systemPressureBarG', site.coldBar, 'cold', 1200);
  add('waterPh', text(site.ph, 1, mark), '', 1300, { point: 'after' });
  add('inhibitorPct', text(site.inhibitorPct, 1, mark), '%', 1310, { point: 'after' });
  add('conductivityUsPerCm', text(site.conductivityUsPerCm, 0, mark), 'µS/cm', 1320, { point: 'after' });
  add('hardnessMmolPerL', text(site.hardnessMmolPerL, 2, mark), 'mmol/L', 1330, { point: 'after' });
  add('chlorideMgPerL', text(site.chlorideMgPerL, 0, mark), 'mg/L', 1340, { point: 'after' });
  add('ratedInputKw', write(site.ratedKwGross, units.power), units.power.symbol, 1400);

  const typesRatio = random.chance(0.5);
  const typesAirFree = random.chance(0.5);
  const typesFan = random.chance(0.5);
  const flue = (state: FiringState, point: string, reachedAtS: number) => {
    const stepKey = `combustion-${point}`;
    const firstAtS = reachedAtS + SETTLE_S + random.between(10, 240);
    // One instrument, one error: what differs between two samples is the burner's own flutter.
    const o2 = read(state.o2Pct, ACCURACY.o2VolPct);
    const co2 = read((site.co2MaxPct * (20.946 - state.o2Pct)) / 20.946, ACCURACY.co2VolPct);
    const co = read(state.coPpm, ACCURACY.coPpm);
    const flueC = read(state.flueC, ACCURACY.flueGasC);
    for (const sample of [1, 2]) {
      const where = { point, sample, itemKey: `series-${point}`, stepKey, ...analyser };
      const atS = firstAtS + (sample - 1) * random.between(65, 150);
      const o2Shown = Number((o2 + random.error(0.06)).toFixed(1));
      const coShown = Math.max(0, Math.round(co + random.error(Math.min(2, co * 0.04))));
      const co2Shown = measuresCo2 ? co2 + random.error(0.05) : (analyserCo2MaxPct * (20.9 - o2Shown)) / 20.9;
      add('o2DryVolPct', text(o2Shown, 1, mark), '%', atS, where);
      add('co2DryVolPct', text(co2Shown, 1, mark), '%', atS, where);
      add('coPpm', text(coShown, 0, mark), 'ppm', atS, where);
      add('flueGasC', write(flueC + random.error(0.5), units.temperature), units.temperature.symbol, atS, where);
      if (typesAirFree) add('coAirFreePpm', text((coShown * 20.9) / (20.9 - o2Shown), 0, mark), 'ppm', atS, where);
      if (typesRatio) add('coCo2Ratio', text(coShown / (co2Shown * 1e4), 4, mark), '', atS, where);
    }
    const celsius = (quantity: QuantityKey, value: number, accuracy: AccuracyClass) =>
      add(quantity, write(read(value, accuracy), units.temperature), units.temperature.symbol, firstAtS + 60, {
        point,
        stepKey,
      });
    celsius('intakeAirC', state.airC, ACCURACY.airC);
    celsius('supplyC', state.supplyC, ACCURACY.waterC);
    celsius('returnC', state.returnC, ACCURACY.waterC);
    if (typesFan) add('fanSpeedRpm', text(state.fanRpm, 0, mark), 'rpm', firstAtS + 60, { point, stepKey });
  };
  flue(site.high, 'high', highReachedAtS);
  gas('inletPressureMbarG', site.dynamicMbar, 'dynamic', 3300);
  gas('inletPressureMbarG', site.allOnMbar, 'dynamic-all-on', 3400);
  if (site.fuel === 'natural-gas') {
    const dialM3 = unitSystem === 'us' ? random.pick([0.5, 1, 2]) * 0.0283168466 : random.pick([0.01, 0.1]);
    const { turns, seconds } = timing(site, dialM3, meterCompensation, random);
    add('meterDialM3', text(units.dial.from(dialM3), units.dial.decimals, mark), units.dial.symbol, 3500);
    add('meterTurns', text(turns, 0, mark), '', 3510);
    add('meterSeconds', text(seconds, 1, mark), 's', 3520);
    add('heatingValueMjPerM3', write(site.heatingValueMjPerM3, units.heat), units.heat.symbol, 3530);
    if (random.chance(0.5)) {
      const secondsTyped = Number(seconds.toFixed(1));
      const rate = (3600 * turns * dialM3) / secondsTyped;
      add('typedGasRateM3PerH', write(rate, units.rate), units.rate.symbol, 3540);
    }
  }
  flue(site.low, 'low', lowReachedAtS);
  bar('systemPressureBarG', site.hotBar, 'hot', 4800);
  add('mixedOutletC', write(read(site.mixedC, ACCURACY.airC), units.temperature), units.temperature.symbol, 4900);
  add('coldInletC', write(read(site.coldWaterC, ACCURACY.airC), units.temperature), units.temperature.symbol, 4910);

  return {
    site,
    unitSystem,
    entries,
    measuresCo2,
    analyserCo2MaxPct,
    coRangeMaxPpm: random.pick([2000, 4000, 8000]),
    calibrationDueOn: `2027-0${random.whole(1, 9)}-15`,
    sheetRatedKw: random.chance(0.8) ? site.ratedKwGross : null,
    meterCompensation,
    highReachedAtS,
    lowReachedAtS,
    tuningFinishedAtS,
    ...aroundTheRun(site, random),
  };
}

/** As the meter really turns: its own cubic metres, at the pressure and temperature of the place. */
function timing(
  site: TrueSite,
  dialM3: number,
  compensation: EnteredSet['meterCompensation'],
  random: Random,
): { readonly turns: number; readonly seconds: number } {
  const airKpa = 101.325 * (1 - 2.25577e-5 * site.altitudeM) ** 5.25588;
  const pressureFactor = (airKpa + site.dynamicMbar / 10) / 101.325;
  const temperatureFactor = 288.15 / (273.15 + random.between(8, 20));
  const factor =
    compensation === 'temperature-pressure'
      ? 1
      : compensation === 'temperature'
        ? pressureFactor
        : pressureFactor * temperatureFactor;
  // The sheet's rule: 2 % per 1000 ft from sea level.
  const siteKw = site.ratedKwGross * (1 - (0.02 * site.altitudeM) / 304.8);
  const m3PerS = (siteKw * site.inputShare) / (site.heatingValueMjPerM3 * 1000) / factor;
  const turns = Math.max(2, Math.ceil((60 * m3PerS) / dialM3));
  const seconds = (turns * dialM3) / m3PerS;
  return { turns, seconds: seconds + random.error(ACCURACY.stopwatchS.abs) };
}

export function text(value: number, decimals: number, mark: string): string {
  const fixed = value.toFixed(decimals);
  return (Number(fixed) === 0 ? fixed.replace('-', '') : fixed).replace('.', mark);
}
