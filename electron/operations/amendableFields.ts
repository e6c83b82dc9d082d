/** What of a sealed record an amendment can be about: each field with its place, its name in words and what it says. */
import { isQuantityKey, quantitySpec } from '../../domain/quantity/quantities.ts';
import { typedWithUnit } from '../../domain/quantity/typedWithUnit.ts';
import type { Revealed } from '../sealing/revealRecord.ts';
import type { SealedRecord } from '../sealing/sealedRecord.ts';

export type AmendableField = { readonly path: string; readonly what: string; readonly says: string | null };

type OpenRecord = Revealed<SealedRecord>;

export function amendableFields(record: OpenRecord): readonly AmendableField[] {
  const { appliance, site, visit, run } = record;
  const items = new Map(
    record.sheet.steps.flatMap((step) => step.items.map((item) => [item.key, item.label] as const)),
  );
  const label = (itemKey: string): string => items.get(itemKey) ?? itemKey.replaceAll('-', ' ');
  return [
    field('/appliance/serial', 'Serial number', appliance.serial),
    field('/appliance/maker', 'Maker', appliance.maker),
    field('/appliance/model', 'Model', appliance.model),
    field('/appliance/plateFuel', 'Fuel on the plate', appliance.plateFuel),
    field('/appliance/ratedInputKw', 'Rated input (kW)', appliance.ratedInputKw),
    field('/appliance/position', 'Where the appliance stands', appliance.position),
    field('/appliance/vent/kind', 'Vent', appliance.vent.kind),
    field('/appliance/vent/lengthM', 'Vent length (m)', appliance.vent.lengthM),
    ...appliance.dates.map((date, index) =>
      field(`/appliance/dates/${index}/on`, `Day: ${date.kind.replaceAll('-', ' ')}`, date.on),
    ),
    field('/site/street', 'Street of the site', site.street),
    field('/site/postcode', 'Postcode of the site', site.postcode),
    field('/site/city', 'City of the site', site.city),
    field('/site/altitudeM', 'Altitude (m)', site.altitudeM),
    field('/visit/labourMin', 'Minutes of labour', visit.labourMin),
    ...record.parties.flatMap((party, index) => [
      field(`/parties/${index}/name`, `Name of the ${party.roles[0] ?? 'party'}`, party.name),
      field(`/parties/${index}/phone`, `Phone of the ${party.roles[0] ?? 'party'}`, party.phone),
      field(`/parties/${index}/email`, `E-mail of the ${party.roles[0] ?? 'party'}`, party.email),
    ]),
    ...run.readings.flatMap((reading, index) =>
      reading.supersededById === null
        ? [
            field(
              `/run/readings/${index}`,
              [
                label(reading.itemKey),
                quantityWords(reading.quantity),
                reading.point?.replaceAll('-', ' '),
                sampleWords(reading.sample),
              ]
                .filter((part) => part !== undefined && part !== '')
                .join(', '),
              reading.valueOwn === null
                ? `not measured: ${reading.notMeasuredReason ?? ''}`
                : typedWithUnit(reading.typedText, reading.typedUnit),
            ),
          ]
        : [],
    ),
    ...run.answers.map((answer, index) =>
      field(`/run/answers/${index}`, label(answer.itemKey), answer.value ?? answer.words ?? answer.reason),
    ),
    ...run.instruments.map((instrument, index) =>
      field(`/run/instruments/${index}/serial`, `Serial number of ${instrument.label}`, instrument.serial),
    ),
    ...run.signOffs.map((signOff, index) =>
      field(`/run/signOffs/${index}/name`, `${label(signOff.itemKey)}: name`, signOff.name),
    ),
  ];
}

function field(path: string, what: string, says: string | null): AmendableField {
  return { path, what, says };
}

function quantityWords(quantity: string): string {
  return isQuantityKey(quantity) ? quantitySpec(quantity).label : quantity;
}

/** The first of a series needs no number where there is only one. */
function sampleWords(sample: string): string {
  return sample === '1' ? '' : `sample ${sample}`;
}
