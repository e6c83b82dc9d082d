/** The inputs of a worksheet as a run has them: its newest readings, of one firing point together, and what is on file for the site. */
import { regionOf } from '../../../domain/judgement/regions.ts';
import type { RecordedReading, RunRecord } from '../../../domain/procedure/runRecord.ts';
import { entryUnits } from '../../../domain/quantity/entryUnits.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import type { TypedInput, TypedInputs } from '../core/evaluate.ts';
import type { ChoiceField, NumberField } from '../core/fields.ts';
import type { Worksheet } from '../core/worksheet.ts';

export function fillFromRun(worksheet: Worksheet, record: RunRecord): TypedInputs {
  const wanted = new Set(
    Object.values(worksheet.fields).flatMap((field) =>
      field.kind === 'number' && field.reading !== undefined ? [field.reading.quantity] : [],
    ),
  );
  const readings = record.readings
    .filter(
      (one) =>
        one.supersededById === null && one.valueOwn !== null && one.comparator === '=' && wanted.has(one.quantity),
    )
    .toSorted((one, other) => (one.measuredAt < other.measuredAt ? -1 : one.measuredAt > other.measuredAt ? 1 : 0));
  const newest = readings.at(-1) ?? null;
  return Object.fromEntries(
    Object.entries(worksheet.fields).flatMap(([key, field]) => {
      const input =
        field.kind === 'choice' ? choiceOnFile(field, record) : numberOnFile(field, readings, newest, record);
      return input === null ? [] : [[key, input]];
    }),
  );
}

function numberOnFile(
  { reading }: NumberField,
  readings: readonly RecordedReading[],
  newest: RecordedReading | null,
  record: RunRecord,
): TypedInput | null {
  if (reading === undefined) return null;
  const { quantity, points } = reading;
  const matching = readings.filter((one) => one.quantity === quantity && (points?.includes(one.point) ?? true));
  const found =
    matching.findLast((one) => one.itemKey === newest?.itemKey && one.sample === newest.sample) ?? matching.at(-1);
  if (found !== undefined) return { text: found.typedText, unit: found.typedUnit };
  const own = SITE_VALUES[quantity]?.(record) ?? null;
  return own === null ? null : { text: String(own), unit: entryUnits(quantity)[0].symbol };
}

/** Known without a reading. */
const SITE_VALUES: Partial<Record<QuantityKey, (record: RunRecord) => number | null>> = {
  altitudeM: ({ site }) => site.altitudeM,
  systemHeightM: ({ site }) => site.systemHeightM,
  systemVolumeL: ({ site }) => site.systemVolumeL,
  heatingValueMjPerM3: ({ site }) => site.heatingValueMjPerM3,
  coldInletC: ({ site }) => site.coldWaterC,
  ratedInputKw: ({ appliance }) => appliance.ratedInputKw,
};

function choiceOnFile({ onFile, options }: ChoiceField, record: RunRecord): TypedInput | null {
  if (onFile === 'practice') {
    return { text: regionOf(record.site.jurisdiction) === 'north-america' ? 'north-america' : 'europe' };
  }
  return onFile === 'fuel' && Object.hasOwn(options, record.fuel) ? { text: record.fuel } : null;
}
