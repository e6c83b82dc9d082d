/**
 * The houses and plant rooms of the scenario. Floor area and age give the heat a building needs; emitters, boiler, water and
 * gas meter follow from that, each large enough for what hangs on it. The few that do not fit are named here, and meant.
 */
import type { EmitterKind } from '../../../domain/procedure/modelSheet.ts';
import { type BoilerModel, inputKwGross } from './models.ts';
import type { Random } from './random.ts';

type Fuel = 'natural-gas' | 'propane';
type BuildingKind = 'home' | 'rental' | 'new-build' | 'commercial';
type Emitter = { readonly emitter: EmitterKind; readonly zone: string; readonly ratedKw: number };

export type Building = {
  readonly label: string | null;
  readonly kind: BuildingKind;
  /** All on one system. */
  readonly boilers: readonly BoilerModel[];
  readonly emitters: readonly Emitter[];
  readonly systemHeightM: number;
  readonly systemVolumeL: number;
  /** What else burns gas there. */
  readonly otherLoads: readonly { readonly name: string; readonly inputKw: number }[];
  readonly meterCapacityM3PerH: number | null;
  readonly meterDialM3: number | null;
};

/** A pool heater came after the meter: everything on at once asks for more than it passes. By number of the customer. */
const METER_TOO_SMALL: readonly number[] = [15, 33];
/** One heated bathroom floor is a zone of its own and takes less than the boiler's lowest fire. By number of the customer. */
const ZONE_TOO_SMALL: readonly number[] = [7];
/** A large house with two boilers on one system. By number of the customer. */
const TWO_BOILERS: readonly number[] = [4, 22, 31];

/** What is fitted in homes, one after the other: boilers of plant rooms are none of it. */
const IN_HOMES = {
  'natural-gas': ['ebberlund-skerry-s', 'tarnhollow-foundry-h', 'quillstone-cinder-c', 'tarnhollow-foundry-h'],
  propane: ['ebberlund-skerry-s', 'quillstone-cinder-c', 'sorrelgate-pumice-lp'],
} as const satisfies Record<Fuel, readonly string[]>;

/** Heat lost per m² of heated floor on the coldest day, in W: walls of their time; common practice, no source. */
const LOSS_W_PER_M2: Readonly<Record<BuildingKind, readonly [number, number]>> = {
  home: [58, 80],
  rental: [62, 85],
  'new-build': [42, 52],
  commercial: [60, 75],
};
/** Emitters are chosen a little larger than the loss. */
const EMITTER_MARGIN = 1.1;
/** Litres of system water per kW of emitters, boiler apart; a trade sheet on estimating volume, ±40 %. */
const WATER_L_PER_KW: Partial<Record<EmitterKind, number>> = {
  'fin-tube-baseboard': 6,
  'fan-coil': 8,
  'panel-radiators': 11,
  'old-radiators': 14,
  'floor-slab': 23,
};
/** Hot water of a combi: a second bathroom wants the larger one. */
const HOT_WATER_KW = { small: 22, large: 28, fromM2: 175 };
const STOREY_M = 2.7;
/** Of usual gas meters, smallest first, m³/h; common practice, no source. */
const METERS_M3_PER_H = [4.2, 7.1, 12, 17.8, 28.3, 42.5, 56.6, 85] as const;
/** Large meters turn a hand of 0.1 m³, small ones of 0.01 m³. */
const LARGE_METER_M3_PER_H = 28.3;

type FirmBuilding = {
  readonly label: string;
  readonly kind: BuildingKind;
  readonly storeys: number;
  readonly areaM2: number;
  readonly emitter: EmitterKind;
  readonly boilers: readonly string[];
};
export const FIRM_BUILDINGS: Readonly<Record<string, readonly FirmBuilding[]>> = {
  'Bluff Head Homes': [
    firm('Gull House, plant room', 'commercial', 4, 1600, 'old-radiators', ['Bellows 150', 'Foundry 40 H']),
    firm('Shore Cottage', 'rental', 2, 150, 'panel-radiators', ['Skerry 20 S']),
    firm('Site office', 'commercial', 1, 120, 'panel-radiators', ['Cinder 24 C']),
  ],
  'Saltmarsh Lettings': [
    firm('Harbour Court, plant room', 'commercial', 4, 1450, 'old-radiators', ['Bellows 150']),
    firm('Netmaker’s House', 'rental', 2, 130, 'panel-radiators', ['Cinder 24 C']),
    firm('Old Chandlery', 'rental', 2, 210, 'panel-radiators', ['Foundry 30 H']),
    firm('Pilot’s House', 'rental', 2, 165, 'panel-radiators', ['Skerry 20 S']),
    firm('Customs House, plant room', 'commercial', 3, 1350, 'old-radiators', ['Bellows 150']),
  ],
  'Grindstone Bakery': [
    firm('Shop', 'commercial', 1, 125, 'panel-radiators', ['Cinder 24 C']),
    firm('Flour store', 'commercial', 1, 110, 'panel-radiators', ['Pumice 18 LP']),
    firm('Bakehouse', 'commercial', 2, 560, 'fan-coil', ['Skerry 35 S', 'Skerry 35 S']),
  ],
  'Headland School Board': [
    firm('Headland School, plant room', 'commercial', 3, 2900, 'old-radiators', ['Bellows 150', 'Bellows 150']),
    firm('Caretaker’s house', 'rental', 2, 130, 'panel-radiators', ['Skerry 20 S']),
    firm('Infant school', 'commercial', 1, 780, 'panel-radiators', ['Foundry 40 H', 'Foundry 40 H']),
  ],
  'Quayside Flats Association': [
    firm('Quayside Flats, plant room', 'commercial', 4, 2700, 'old-radiators', [
      'Bellows 150',
      'Bellows 150',
      'Foundry 40 H',
    ]),
    firm('Porter’s lodge', 'commercial', 1, 105, 'panel-radiators', ['Cinder 24 C']),
  ],
};

/** Everything of a firm's; `random` is the building's own. */
export function buildingsOfFirm(
  name: string,
  fuel: Fuel,
  models: readonly BoilerModel[],
  random: Random,
): readonly Building[] {
  const found = FIRM_BUILDINGS[name];
  if (found === undefined) throw new Error(`nothing is known of the buildings of ${name}`);
  return found.map(({ label, kind, storeys, areaM2, emitter, boilers: names }) => {
    const boilers = names.map((model) => {
      const one = models.find((known) => known.model === model);
      if (one === undefined) throw new Error(`no boiler ${model}`);
      return one;
    });
    const ratedKw = roundedKw(areaM2 * lossKwPerM2(kind, random) * EMITTER_MARGIN);
    const emitters = [{ emitter, zone: 'whole building', ratedKw }];
    return finish({ label, kind, boilers, emitters, storeys, otherLoads: [] }, fuel, random);
  });
}

/** A customer's house, with the boiler whose turn it is in the smallest size that does. */
export function houseOf(
  index: number,
  firstBoiler: number,
  fuel: Fuel,
  models: readonly BoilerModel[],
  random: Random,
): Building {
  const isLarge = TWO_BOILERS.includes(index);
  // Two on one system heat only, or with a cylinder: a combi's own hot water is no use to the other.
  const sheetId = isLarge ? IN_HOMES[fuel][0] : IN_HOMES[fuel][firstBoiler % IN_HOMES[fuel].length];
  const sizes = models.filter(({ sheet }) => sheet.sheetId === sheetId);
  const [smallest] = sizes;
  if (smallest === undefined) throw new Error(`no sheet for ${fuel}`);
  const kind = isLarge ? 'home' : random.pick(['home', 'home', 'new-build', 'rental'] as const);
  const storeys = isLarge || index % 5 === 2 ? 2 : random.integer(1, 2);
  const shares = zonesOf(index, smallest, isLarge);
  const lossKw = lossKwPerM2(kind, random);
  // No house so small that a zone could not take the lowest fire of the boiler put into it.
  const leastShare = Math.min(...shares.filter(({ isMeantSmall }) => !isMeantSmall).map(({ share }) => share));
  const lowestFireKw = smallest.sheet.appliance.ratedInputMinKw ?? 0;
  const leastAreaM2 = (1.05 * lowestFireKw) / leastShare / (lossKw * EMITTER_MARGIN);
  const areaM2 = Math.max(isLarge ? 360 : random.integer(95, storeys === 2 ? 210 : 150), leastAreaM2);
  const emitters = shares.map(({ emitter, zone, share }) => ({
    emitter,
    zone,
    ratedKw: roundedKw(areaM2 * lossKw * EMITTER_MARGIN * share),
  }));
  const size = smallestThatDoes(sizes, emitters, isLarge ? 2 : 1, areaM2);
  const isShort = METER_TOO_SMALL.includes(index);
  return finish(
    {
      label: null,
      kind,
      boilers: isLarge ? [size, size] : [size],
      emitters,
      storeys,
      otherLoads: isShort
        ? [...otherLoads(random), { name: 'pool heater', inputKw: 36 }]
        : fuel === 'propane'
          ? [{ name: 'cooker', inputKw: 12 }]
          : otherLoads(random),
      ...(isShort ? { meterCapacityM3PerH: METERS_M3_PER_H[0] } : {}),
    },
    fuel,
    random,
  );
}

type Zone = {
  readonly emitter: EmitterKind;
  readonly zone: string;
  readonly share: number;
  readonly isMeantSmall?: boolean;
};

function zonesOf(index: number, { sheet }: BoilerModel, isLarge: boolean): readonly Zone[] {
  if (ZONE_TOO_SMALL.includes(index))
    return [
      { emitter: 'panel-radiators', zone: 'house', share: 0.75 },
      { emitter: 'floor-slab', zone: 'bathroom floor', share: 0.25, isMeantSmall: true },
    ];
  if (isLarge)
    return [
      { emitter: 'panel-radiators', zone: 'main house', share: 0.6 },
      { emitter: 'panel-radiators', zone: 'guest wing', share: 0.4 },
    ];
  // Its lowest fire is too much for one floor of a house, and its water may not be cooled as little as baseboard does.
  const isHeatingOnly = sheet.appliance.hotWater === 'none';
  if (index % 5 === 2 && !isHeatingOnly)
    return [
      { emitter: 'floor-slab', zone: 'ground floor', share: 0.5 },
      { emitter: 'panel-radiators', zone: 'upstairs', share: 0.5 },
    ];
  const emitter = index % 3 === 0 && !isHeatingOnly ? 'fin-tube-baseboard' : 'panel-radiators';
  return [{ emitter, zone: 'whole house', share: 1 }];
}

function smallestThatDoes(
  sizes: readonly BoilerModel[],
  emitters: readonly Emitter[],
  count: number,
  areaM2: number,
): BoilerModel {
  const hotWaterKw = areaM2 > HOT_WATER_KW.fromM2 ? HOT_WATER_KW.large : HOT_WATER_KW.small;
  const found = sizes.find(({ outputKw, sheet }) => {
    const draws = sheet.appliance.hotWater === 'combi' && sizes.length > 1 ? hotWaterKw : 0;
    return count * outputKw >= Math.max(totalKw(emitters), draws);
  });
  if (found === undefined) throw new Error(`no boiler makes ${totalKw(emitters)} kW`);
  return found;
}

type Sized = Pick<Building, 'label' | 'kind' | 'boilers' | 'emitters' | 'otherLoads'> & {
  readonly storeys: number;
  readonly meterCapacityM3PerH?: number;
};

function finish({ storeys, ...building }: Sized, fuel: Fuel, random: Random): Building {
  const waterL =
    building.emitters.reduce((sum, one) => sum + one.ratedKw * (WATER_L_PER_KW[one.emitter] ?? 11), 0) *
    random.between(0.85, 1.15);
  const contentL = building.boilers.reduce((sum, one) => sum + one.waterL, 0);
  const meterCapacityM3PerH =
    fuel === 'propane' ? null : (building.meterCapacityM3PerH ?? meterFor(connectedKw(building, fuel)));
  return {
    ...building,
    // From the gauge at the boiler, below or on the ground floor, to the top of the highest emitter.
    systemHeightM: Math.round(10 * (storeys * STOREY_M + random.between(-0.8, 0.6))) / 10,
    systemVolumeL: Math.round(waterL + contentL),
    meterCapacityM3PerH,
    meterDialM3: meterCapacityM3PerH === null ? null : meterCapacityM3PerH >= LARGE_METER_M3_PER_H ? 0.1 : 0.01,
  };
}

function connectedKw({ boilers, otherLoads: others }: Pick<Building, 'boilers' | 'otherLoads'>, fuel: Fuel): number {
  return [...boilers.map((one) => inputKwGross(one, fuel)), ...others.map(({ inputKw }) => inputKw)].reduce(
    (sum, kw) => sum + kw,
    0,
  );
}

function meterFor(kw: number): number {
  const found = METERS_M3_PER_H.find((size) => (size * HEATING_VALUE_MJ_PER_M3['natural-gas']) / 3.6 >= kw);
  if (found === undefined) throw new Error(`no meter passes ${kw} kW`);
  return found;
}

export const HEATING_VALUE_MJ_PER_M3 = { 'natural-gas': 38, propane: 95.6 } as const;

function otherLoads(random: Random): Building['otherLoads'] {
  return [
    ...(random.chance(0.7) ? [{ name: 'cooker', inputKw: 12 }] : []),
    ...(random.chance(0.3) ? [{ name: 'fireplace', inputKw: 8 }] : []),
    ...(random.chance(0.2) ? [{ name: 'dryer', inputKw: 6 }] : []),
  ];
}

function lossKwPerM2(kind: BuildingKind, random: Random): number {
  const [least, most] = LOSS_W_PER_M2[kind];
  return random.between(least, most) / 1000;
}

function roundedKw(kw: number): number {
  return Math.ceil(kw * 2) / 2;
}

function totalKw(emitters: readonly Emitter[]): number {
  return emitters.reduce((sum, { ratedKw }) => sum + ratedKw, 0);
}

function firm(
  label: string,
  kind: BuildingKind,
  storeys: number,
  areaM2: number,
  emitter: EmitterKind,
  boilers: readonly string[],
): FirmBuilding {
  return { label, kind, storeys, areaM2, emitter, boilers };
}
