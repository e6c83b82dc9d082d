/**
 * A boiler and its system as they really are, before anybody reads anything. Physics and habits of the trade only; ranges
 * from makers' sheets that were read and common practice, no source. Nothing here knows how readings are judged.
 */
import type { Random } from './random.ts';

export type SiteFuel = 'natural-gas' | 'propane';
export type Place = 'north-america' | 'europe';

export type FiringState = {
  readonly o2Pct: number;
  readonly coPpm: number;
  readonly flueC: number;
  readonly airC: number;
  readonly supplyC: number;
  readonly returnC: number;
  readonly fanRpm: number;
};

export type TrueSite = {
  readonly place: Place;
  readonly fuel: SiteFuel;
  /** Of the gas that burns. */
  readonly co2MaxPct: number;
  readonly ratedKwGross: number;
  readonly ventMaxC: number;
  readonly altitudeM: number;
  readonly heatingValueMjPerM3: number;
  readonly high: FiringState;
  readonly low: FiringState;
  readonly staticMbar: number;
  readonly dynamicMbar: number;
  readonly allOnMbar: number;
  readonly heightM: number;
  readonly coldBar: number;
  readonly hotBar: number;
  readonly reliefBar: number;
  readonly preChargeBar: number;
  /** Heat input at high fire over the rating of this site. */
  readonly inputShare: number;
  readonly ph: number;
  readonly inhibitorPct: number;
  readonly conductivityUsPerCm: number;
  readonly hardnessMmolPerL: number;
  readonly chlorideMgPerL: number;
  readonly coldWaterC: number;
  readonly mixedC: number;
  readonly roomCoPpm: number;
};

const PSI_BAR = 0.0689475729;
const IN_WC_MBAR = 2.4908891;

export function trueSite(random: Random): TrueSite {
  const place = random.pick(['north-america', 'europe']);
  const fuel: SiteFuel = random.chance(0.65) ? 'natural-gas' : 'propane';
  const isGas = fuel === 'natural-gas';
  const staticMbar = inletPressure(place, fuel, random);
  const dynamicMbar = staticMbar - random.between(0.1, Math.min(2.5, staticMbar * 0.12));
  const heightM = place === 'europe' ? random.between(2, 12) : random.between(2, 7.5);
  const reliefBar = place === 'europe' ? 3 : 30 * PSI_BAR;
  const coldBar =
    place === 'europe'
      ? Math.max(random.between(1, 1.5), heightM * 0.098 + random.between(0.25, 0.4))
      : Math.max(random.between(12, 15), heightM * 1.42 + random.between(3.5, 5)) * PSI_BAR;
  const ventMaxC = random.pick([80, 90, 110]);
  const [high, low] = firing(fuel, ventMaxC, random);
  return {
    place,
    fuel,
    co2MaxPct: isGas ? random.between(11.7, 11.95) : random.between(13.65, 13.8),
    ratedKwGross: random.between(12, 60),
    ventMaxC,
    altitudeM: place === 'europe' ? random.between(0, 900) : random.between(0, 2400),
    heatingValueMjPerM3: isGas ? random.between(place === 'europe' ? 33 : 36.5, 41) : random.between(92, 98),
    high,
    low,
    staticMbar,
    dynamicMbar,
    allOnMbar: dynamicMbar - random.between(0, 0.8),
    heightM,
    coldBar,
    hotBar: coldBar + random.between(0.2, 0.45),
    reliefBar,
    preChargeBar: coldBar - random.between(0, 0.25),
    // Adjusted or adaptive burners come within a few percent of their rating.
    inputShare: 1 + random.error(0.06),
    ph: random.between(7.2, 9.6),
    inhibitorPct: random.between(0.4, 4),
    conductivityUsPerCm: random.between(60, 1500),
    hardnessMmolPerL: random.between(0.02, 3),
    chlorideMgPerL: random.between(5, 120),
    coldWaterC: random.between(5, 18),
    mixedC: random.between(41, 48),
    roomCoPpm: random.between(0, 4),
  };
}

function inletPressure(place: Place, fuel: SiteFuel, random: Random): number {
  if (place === 'north-america') {
    return IN_WC_MBAR * (fuel === 'natural-gas' ? random.between(5, 10.5) : random.between(10, 13.5));
  }
  if (fuel === 'natural-gas') return random.between(18.5, 25);
  const nominal = random.pick([30, 37, 50]);
  return nominal * random.between(0.93, 1.08);
}

/** Supply at high fire by emitter: floors, new radiators, old ones, baseboard. */
const SUPPLIES: readonly [readonly [number, number], ...(readonly [number, number])[]] = [
  [32, 45],
  [45, 60],
  [55, 75],
  [60, 80],
];

function firing(fuel: SiteFuel, ventMaxC: number, random: Random): readonly [FiringState, FiringState] {
  const [coolest, hottest] = random.pick(SUPPLIES);
  const supplyC = random.between(coolest, hottest);
  const deltaTK = coolest < 40 ? random.between(5, 10) : random.between(8, 20);
  const returnC = supplyC - deltaTK;
  const riseK = Math.min(random.between(5, 30), ventMaxC - 6 - returnC);
  const o2Pct = fuel === 'natural-gas' ? random.between(3.9, 6) : random.between(4.4, 6.5);
  const airC = random.between(-5, 25);
  const turndown = random.between(4, 10);
  const fanRpm = random.between(4500, 7000);
  // At low fire the same pump carries less heat: the return comes up, and the flue gas cools almost down to it.
  const lowReturnC = returnC + random.between(-2, 4);
  const high = { o2Pct, coPpm: logBetween(15, 140, random), flueC: returnC + riseK, airC, supplyC, returnC, fanRpm };
  const low = {
    o2Pct: Math.min(7, Math.max(3.5, o2Pct + random.between(-0.8, 1.2))),
    coPpm: logBetween(3, 50, random),
    flueC: lowReturnC + riseK * random.between(0.15, 0.6),
    airC: airC + random.between(-1, 1),
    supplyC: lowReturnC + Math.max(1.5, deltaTK * random.between(0.25, 0.55)),
    returnC: lowReturnC,
    fanRpm: fanRpm / turndown ** 0.9,
  };
  return [high, low];
}

function logBetween(min: number, max: number, random: Random): number {
  return Math.exp(random.between(Math.log(min), Math.log(max)));
}
