/** A site as a form holds it: numbers as typed with their unit, read into the store's own units on the way out. */
import type { UnitSystem } from '../../domain/quantity/preferredUnit.ts';
import type { CompanyProfile } from '../../electron/contract/app.ts';
import type { SiteFields } from '../../electron/contract/sites.ts';
import type { FormReader } from '../form/FormReader.ts';
import { showAmount, type TypedAmount, usualUnit } from '../form/typedAmount.ts';
import { BUILDING_WORDS, EMITTER_WORDS, keyOf } from '../kit/tradeWords.ts';

export type EmitterRow = {
  readonly rowId: string;
  readonly emitter: string;
  readonly zone: string;
  readonly ratedKw: TypedAmount;
};

export type SiteForm = {
  readonly label: string;
  readonly street: string;
  readonly postcode: string;
  readonly city: string;
  readonly region: string;
  readonly country: string;
  readonly latitude: string;
  readonly longitude: string;
  readonly jurisdiction: string;
  readonly timeZone: string;
  readonly buildingKind: string;
  readonly access: string;
  readonly altitudeM: TypedAmount;
  readonly systemHeightM: TypedAmount;
  readonly systemVolumeL: TypedAmount;
  readonly systemVolumeHow: string;
  readonly coldWaterC: TypedAmount;
  readonly glycolKind: string;
  readonly emitters: readonly EmitterRow[];
};

export function emptySite(company: CompanyProfile | null, unitSystem: UnitSystem): SiteForm {
  const length = { text: '', unit: usualUnit('length', unitSystem) };
  return {
    label: '',
    street: '',
    postcode: '',
    city: '',
    region: company?.region ?? '',
    country: company?.country ?? '',
    latitude: '',
    longitude: '',
    jurisdiction: company?.jurisdiction ?? '',
    timeZone: company?.timeZone ?? '',
    buildingKind: 'home',
    access: '',
    altitudeM: length,
    systemHeightM: length,
    systemVolumeL: { text: '', unit: usualUnit('volume', unitSystem) },
    systemVolumeHow: '',
    coldWaterC: { text: '', unit: usualUnit('temperature', unitSystem) },
    glycolKind: '',
    emitters: [],
  };
}

export function siteToForm(site: SiteFields, unitSystem: UnitSystem): SiteForm {
  const lengthUnit = usualUnit('length', unitSystem);
  return {
    label: site.label ?? '',
    street: site.street,
    postcode: site.postcode ?? '',
    city: site.city,
    region: site.region ?? '',
    country: site.country,
    latitude: site.latitude === null ? '' : String(site.latitude),
    longitude: site.longitude === null ? '' : String(site.longitude),
    jurisdiction: site.jurisdiction,
    timeZone: site.timeZone,
    buildingKind: site.buildingKind,
    access: site.access ?? '',
    altitudeM: showAmount('length', site.altitudeM, lengthUnit, 1),
    systemHeightM: showAmount('length', site.systemHeightM, lengthUnit, 2),
    systemVolumeL: showAmount('volume', site.systemVolumeL, usualUnit('volume', unitSystem), 1),
    systemVolumeHow: site.systemVolumeHow ?? '',
    coldWaterC: showAmount('temperature', site.coldWaterC, usualUnit('temperature', unitSystem), 1),
    glycolKind: site.glycolKind ?? '',
    emitters: site.emitters.map(({ emitter, zone, ratedKw }) => ({
      rowId: crypto.randomUUID(),
      emitter,
      zone: zone ?? '',
      ratedKw: showAmount('power', ratedKw, usualUnit('power', unitSystem), 2),
    })),
  };
}

export function siteFromForm(form: SiteForm, reader: FormReader): SiteFields {
  return {
    label: reader.optional(form.label),
    street: form.street,
    postcode: reader.optional(form.postcode),
    city: form.city,
    region: reader.optional(form.region),
    country: form.country,
    latitude: degrees('latitude', form.latitude, reader),
    longitude: degrees('longitude', form.longitude, reader),
    jurisdiction: form.jurisdiction,
    timeZone: reader.timeZone('timeZone', form.timeZone),
    buildingKind: keyOf(BUILDING_WORDS, form.buildingKind) ?? 'home',
    access: reader.optional(form.access),
    altitudeM: reader.amount('altitudeM', form.altitudeM, 'length'),
    systemHeightM: reader.amount('systemHeightM', form.systemHeightM, 'length'),
    systemVolumeL: reader.amount('systemVolumeL', form.systemVolumeL, 'volume'),
    systemVolumeHow:
      form.systemVolumeHow === 'metered' || form.systemVolumeHow === 'estimated' ? form.systemVolumeHow : null,
    coldWaterC: reader.amount('coldWaterC', form.coldWaterC, 'temperature'),
    glycolKind: form.glycolKind === 'propylene' || form.glycolKind === 'ethylene' ? form.glycolKind : null,
    emitters: form.emitters.map((row, index) => ({
      emitter: keyOf(EMITTER_WORDS, row.emitter) ?? 'panel-radiators',
      zone: reader.optional(row.zone),
      ratedKw: reader.amount(`emitters.${index}.ratedKw`, row.ratedKw, 'power'),
    })),
  };
}

function degrees(field: string, text: string, reader: FormReader): number | null {
  const plain = text.trim().replace(',', '.');
  if (plain === '') return null;
  if (/^-?\d+(\.\d+)?$/.test(plain)) return Number(plain);
  reader.fail(field, 'Degrees as a number. Example: 45.508.');
  return null;
}
