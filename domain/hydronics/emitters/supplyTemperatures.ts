import type { Celsius, KelvinDifference } from '../../quantity/units.ts';

export type EmitterKind =
  | 'fin-tube-baseboard'
  | 'cast-iron-or-steel-radiators'
  | 'condensing-radiators'
  | 'fan-coils'
  | 'floor-slab'
  | 'floor-joist'
  | 'hot-water-primary';

export type DesignSupply = {
  readonly emitter: EmitterKind;
  readonly label: string;
  /** null: the source states no lower end. */
  readonly leastC: Celsius | null;
  readonly mostC: Celsius;
  readonly source: string;
};

/**
 * Supply temperature an emitter is designed for.
 *
 * Source   as each row says
 */
export const DESIGN_SUPPLY: readonly DesignSupply[] = [
  {
    emitter: 'fin-tube-baseboard',
    label: 'Fin-tube baseboard',
    leastC: 60,
    mostC: 82,
    source: 'trade articles; textbook range 140–180 °F',
  },
  {
    emitter: 'cast-iron-or-steel-radiators',
    label: 'Cast-iron or steel radiators, older',
    leastC: 70,
    mostC: 80,
    source: 'EN 442 explanation; rated at 75/65',
  },
  {
    emitter: 'condensing-radiators',
    label: 'Radiators for condensing, new wet systems in England since 2022',
    leastC: null,
    mostC: 55,
    source: 'Part L 2021, trade summaries',
  },
  { emitter: 'fan-coils', label: 'Fan coils', leastC: 45, mostC: 60, source: 'common practice, from memory' },
  {
    emitter: 'floor-slab',
    label: 'Floor, slab',
    leastC: 35,
    mostC: 50,
    source: 'floor-heating guide (35–55 °C published)',
  },
  {
    emitter: 'floor-joist',
    label: 'Floor, joist or plate',
    leastC: 45,
    mostC: 60,
    source: 'hydronic textbook; radiant overall 100–140 °F',
  },
  {
    emitter: 'hot-water-primary',
    label: 'Hot-water plate or cylinder, primary',
    leastC: 65,
    mostC: 80,
    source: 'common practice, no source',
  },
];

export type ControlEmitterKind =
  | 'floor-slab'
  | 'floor-under-wood'
  | 'panel-radiators'
  | 'old-radiators'
  | 'fin-tube-baseboard'
  | 'fan-coil-or-air-handler'
  | 'hot-water-cylinder';

export type ControlSetting = {
  readonly emitter: ControlEmitterKind;
  readonly label: string;
  /** Typical highest supply; null where only "as low as works" is said. */
  readonly highestSupplyC: readonly [least: Celsius, most: Celsius] | null;
  readonly deltaTK: readonly [least: KelvinDifference, most: KelvinDifference] | null;
  readonly notes: readonly string[];
};

/**
 * What the controls are typically set to, by emitter: the starting point at a startup, not a limit.
 *
 * Source   common practice, no source, unless the note says otherwise
 */
export const CONTROL_SETTINGS: readonly ControlSetting[] = [
  {
    emitter: 'floor-slab',
    label: 'In-floor, slab',
    highestSupplyC: [30, 45],
    deltaTK: [5, 10],
    notes: ['mixed, or direct low temperature, plus an independent high-limit', 'ramp up over days'],
  },
  {
    emitter: 'floor-under-wood',
    label: 'In-floor under wood',
    highestSupplyC: null,
    deltaTK: [5, 8],
    notes: [
      'as low as works: surface at most 27–29 °C, at most 3 K of change a day, 35–55 % relative humidity (published)',
      'measure at the manifold and on the floor',
    ],
  },
  {
    emitter: 'panel-radiators',
    label: 'Panel radiators, new',
    highestSupplyC: [45, 60],
    deltaTK: [10, 20],
    notes: ['below about 54 °C the return condenses'],
  },
  {
    emitter: 'old-radiators',
    label: 'Old radiators, cast iron',
    highestSupplyC: [55, 75],
    deltaTK: [10, 20],
    notes: ['much water in the system'],
  },
  {
    emitter: 'fin-tube-baseboard',
    label: 'Fin-tube baseboard',
    highestSupplyC: [60, 82],
    deltaTK: [10, 20 / 1.8],
    notes: ['output falls fast when cooled'],
  },
  {
    emitter: 'fan-coil-or-air-handler',
    label: 'Fan coil or air handler',
    highestSupplyC: [50, 70],
    deltaTK: [10, 15],
    notes: [],
  },
  {
    emitter: 'hot-water-cylinder',
    label: 'Hot-water cylinder',
    highestSupplyC: [65, 80],
    deltaTK: null,
    notes: ['store at 60 °C or more and mix down at the outlet', 'scald protection; priority timeout'],
  },
];
