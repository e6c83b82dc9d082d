/**
 * Cited safety ceilings. They stand outside every model sheet: a sheet may only ask for less, and a silent, absent or
 * looser sheet switches none of them off. What a site's law asks for beyond them is for the licensed person to know.
 */
import type { Basis, Block } from '../procedure/modelSheet.ts';
import type { QuantityKey } from '../quantity/quantities.ts';
import { BURNER_OFF, EVERYBODY_OUT, HOT_TAP, PRESSURE_HIGH, VENTILATE } from './makeSafe.ts';
import type { Region } from './regions.ts';

export type SafetyCeiling = {
  readonly key: string;
  readonly quantity: QuantityKey;
  /** Where it counts; a site nobody can place is always among them. */
  readonly regions: readonly Region[] | 'everywhere';
  readonly min?: number;
  readonly max?: number;
  readonly edge: number;
  readonly severity: 'outside' | 'stop';
  readonly blocks: readonly Block[];
  readonly makeSafe: readonly string[];
  /** Everybody leaves first; recording comes afterwards. */
  readonly leaveFirst?: true;
  readonly source: Basis;
};

const EVERYTHING: readonly Block[] = ['firing', 'leaving', 'registration'];

export const SAFETY_CEILINGS: readonly SafetyCeiling[] = [
  {
    key: 'flue-co-air-free',
    quantity: 'coAirFreePpm',
    regions: 'everywhere',
    max: 400,
    // From 300 ppm on a service is recommended in gas-network practice (DVGW G 680, as a utility states it).
    edge: 100,
    severity: 'stop',
    blocks: EVERYTHING,
    makeSafe: BURNER_OFF,
    source: {
      kind: 'standard',
      source: 'ANSI Z21.13 / Z21.47: 400 ppm CO air-free for vented appliances; trade guidance: above it never left on',
    },
  },
  {
    key: 'flue-co-to-co2',
    quantity: 'coCo2Ratio',
    regions: ['britain-and-ireland'],
    max: 0.004,
    edge: 0,
    severity: 'stop',
    blocks: EVERYTHING,
    makeSafe: BURNER_OFF,
    source: {
      kind: 'standard',
      source: 'UK commissioning of condensing boilers: CO/CO₂ 0.0040 (Technical Bulletin 143)',
    },
  },
  {
    key: 'room-co',
    quantity: 'roomCoPpm',
    regions: 'everywhere',
    max: 35,
    // From 10 ppm on the occupants are told.
    edge: 25,
    severity: 'stop',
    blocks: EVERYTHING,
    makeSafe: VENTILATE,
    source: { kind: 'common-practice', source: 'contractor guideline: 36–99 ppm ventilate, stop and find the source' },
  },
  {
    key: 'room-co-everybody-out',
    quantity: 'roomCoPpm',
    regions: 'everywhere',
    max: 99,
    edge: 0,
    severity: 'stop',
    blocks: EVERYTHING,
    makeSafe: EVERYBODY_OUT,
    leaveFirst: true,
    source: { kind: 'common-practice', source: 'contractor guideline: 100 ppm and more, everybody out and call' },
  },
  {
    key: 'intake-air',
    quantity: 'intakeO2VolPct',
    regions: 'everywhere',
    // 20.6 % is accepted as clean air; 20.0 % is some 6 % of flue gas drawn back in.
    min: 20,
    edge: 0.6,
    severity: 'stop',
    blocks: EVERYTHING,
    makeSafe: BURNER_OFF,
    source: { kind: 'common-practice', source: 'flue gas in the intake air: stop; clean air reads 20.9 % O₂' },
  },
  {
    key: 'tap-water',
    quantity: 'mixedOutletC',
    regions: ['north-america'],
    max: 49,
    edge: 1,
    severity: 'outside',
    blocks: ['leaving'],
    makeSafe: HOT_TAP,
    source: {
      kind: 'standard',
      source: 'usual delivery limit at bathing outlets, 120 °F; CPSC tap-water scald notice',
    },
  },
  {
    key: 'tap-water',
    quantity: 'mixedOutletC',
    regions: ['europe', 'britain-and-ireland'],
    max: 50,
    edge: 1,
    severity: 'outside',
    blocks: ['leaving'],
    makeSafe: HOT_TAP,
    source: { kind: 'common-practice', source: 'outlet of 48–50 °C to be looked for; burn tables: minutes at 50 °C' },
  },
  {
    key: 'tap-water-scald',
    quantity: 'mixedOutletC',
    regions: 'everywhere',
    max: 55,
    edge: 0,
    severity: 'stop',
    blocks: EVERYTHING,
    makeSafe: HOT_TAP,
    source: { kind: 'standard', source: 'burn research table: 55 °C burns an adult in 17 s, a child sooner' },
  },
];

export function ceilingsFor(region: Region): readonly SafetyCeiling[] {
  const known = byRegion.get(region);
  if (known) return known;
  const applying = SAFETY_CEILINGS.filter(
    ({ regions }) => region === 'unknown' || regions === 'everywhere' || regions.includes(region),
  );
  byRegion.set(region, applying);
  return applying;
}

const byRegion = new Map<Region, readonly SafetyCeiling[]>();

/** Pressure against the relief valve: how much must be left depends on where the site is. */
export const RELIEF_CEILINGS = {
  makeSafe: PRESSURE_HIGH,
  /** So close to the setting the valve opens: stop. */
  stopBelowSettingBar: 0.2,
  stopSource: { kind: 'common-practice', source: 'pressure over the relief setting − 0.2 bar: stop' },
  source: {
    'north-america': {
      kind: 'standard',
      source: 'ASHRAE HVAC Systems and Equipment: at most 90 % of the relief setting',
    },
    europe: {
      kind: 'common-practice',
      source: 'trade note on end pressure: relief setting − 0.5 bar; above 5 bar − 10 %',
    },
  },
} as const satisfies { readonly source: Record<string, Basis>; readonly stopSource: Basis } & Record<string, unknown>;

/** Flue gas against what the vent is made of. */
export const VENT_CEILING = {
  makeSafe: BURNER_OFF,
  /** Below the lowest limit of any plastic vent nothing needs to be known of the material. */
  harmlessBelowC: 65,
  source: { kind: 'common-practice', source: 'flue gas hotter than the vent material’s limit: stop' },
} as const satisfies { readonly source: Basis } & Record<string, unknown>;
