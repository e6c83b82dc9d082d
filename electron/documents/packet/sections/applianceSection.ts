/** The appliance, its fuel and vent, and the site it stands at. */
import { type Region, regionOf } from '../../../../domain/judgement/regions.ts';
import type { Block, Fact } from '../../page/blocks.ts';
import type { PacketView } from '../packetView.ts';
import { BUILDING_WORDS, EMITTER_WORDS, FUEL_WORDS } from '../packetWords.ts';
import { valueText, withUnit } from '../quantityText.ts';
import { addressText } from './addressText.ts';
import { altitudeRuleText } from './altitudeRuleText.ts';

export function applianceSection(view: PacketView): readonly Block[] {
  return [
    { kind: 'heading', level: 2, text: 'Appliance and site' },
    { kind: 'facts', facts: [...applianceFacts(view), ...siteFacts(view)] },
  ];
}

/** Each system's text once: `148 L (39 US gal)`. */
export function inUnits(view: PacketView, quantity: string, value: string | null): string {
  if (value === null) return 'not on record';
  const texts = view.unitSystems.map((system) => withUnit(valueText(quantity, value, system)));
  const [first = '', second] = texts;
  return second === undefined || second === first ? first : `${first} (${second})`;
}

function applianceFacts(view: PacketView): readonly Fact[] {
  const { appliance, run, computed, sheet } = view.record;
  const siteRatingKw = siteRating(computed);
  const { vent, fuelState } = appliance;
  const elbows = vent.elbows === null ? '' : `, ${vent.elbows} ${vent.elbows === '1' ? 'elbow' : 'elbows'}`;
  const conversion = fuelState?.conversionKit ?? null;
  return [
    { label: 'Maker and model', value: `${appliance.maker} ${appliance.model}` },
    { label: 'Serial number', value: appliance.serial },
    { label: 'Position', value: appliance.position ?? 'not on record' },
    {
      label: 'Fuel burnt',
      value: FUEL_WORDS[run.fuel],
      small: `plate: ${appliance.plateFuel === null ? 'not on record' : FUEL_WORDS[appliance.plateFuel]}; tag: ${appliance.tagFuel === null ? 'none' : FUEL_WORDS[appliance.tagFuel]}`,
    },
    {
      label: 'Conversion',
      value: conversion ?? (appliance.plateFuel === run.fuel ? 'none: the plate’s own fuel' : 'not on record'),
      small: fuelState?.orifice ? `orifice ${fuelState.orifice}` : null,
    },
    {
      label: `Rated input, ${appliance.ratedInputBasis}`,
      value: inUnits(view, 'ratedInputKw', appliance.ratedInputKw),
    },
    {
      label: 'Rated input at this altitude, gross',
      value: siteRatingKw === null ? 'not worked out' : inUnits(view, 'ratedInputKw', siteRatingKw),
      small: altitudeRuleText(sheet.altitude),
    },
    {
      label: 'Vent',
      value: vent.kind ?? 'not on record',
      small: `length ${inUnits(view, 'systemHeightM', vent.lengthM)}${elbows}${vent.isConcealed === true ? ', partly hidden' : ''}`,
    },
  ];
}

/** A value of its own, or what a clocked input was held against. */
function siteRating(computed: PacketView['record']['computed']): string | null {
  const own = computed.find((value) => value.key === 'site-rating')?.value;
  return own ?? computed.find((value) => 'siteRatingKw' in value.inputs)?.inputs['siteRatingKw'] ?? null;
}

function siteFacts(view: PacketView): readonly Fact[] {
  const { site, gasSupply } = view.record;
  return [
    { label: 'Site address', value: addressText(site) },
    { label: 'Building', value: BUILDING_WORDS[site.buildingKind] },
    { label: 'Altitude', value: inUnits(view, 'altitudeM', site.altitudeM) },
    {
      label: 'Heat goes to',
      value: site.emitters.map(({ emitter }) => EMITTER_WORDS[emitter]).join(', ') || 'not on record',
    },
    {
      label: 'Water in the system',
      value: inUnits(view, 'systemVolumeL', site.systemVolumeL),
      small: site.systemVolumeHow,
    },
    { label: 'Height of the system', value: inUnits(view, 'systemHeightM', site.systemHeightM) },
    {
      label: 'Gas supply',
      value: gasSupply
        ? `${gasSupply.kind === 'meter' ? 'Meter' : 'Tank'}${gasSupply.number === null ? '' : ` ${gasSupply.number}`}`
        : 'not on record',
      small: gasSupply?.heatingValueMjPerM3
        ? `heating value ${inUnits(view, 'heatingValueMjPerM3', gasSupply.heatingValueMjPerM3)}${gasSupply.heatingValueSource === null ? '' : `, ${gasSupply.heatingValueSource}`}`
        : null,
    },
    {
      label: 'Rules that applied',
      value: REGION_WORDS[regionOf(site.jurisdiction)],
      small: site.jurisdiction === regionOf(site.jurisdiction) ? null : site.jurisdiction,
    },
  ];
}

const REGION_WORDS = {
  'north-america': 'North America',
  'britain-and-ireland': 'Britain and Ireland',
  europe: 'Europe',
  unknown: 'the strictest: the place is not known',
} as const satisfies Record<Region, string>;
