/** Every reading of a record as a table for spreadsheets: as typed, in the quantity's own unit, and as it was judged. */
import { entryUnits } from '../../../domain/quantity/entryUnits.ts';
import { isQuantityKey } from '../../../domain/quantity/quantities.ts';
import { csvFile, csvNumber, csvText } from '../csvCell.ts';
import { calibrationOfReading } from './calibrationOfReading.ts';
import type { PacketView } from './packetView.ts';
import { quantityLabel } from './quantityText.ts';

const HEADER = [
  'step',
  'item',
  'quantity',
  'label',
  'point',
  'sample',
  'typed_text',
  'typed_unit',
  'value',
  'unit',
  'comparator',
  'not_measured_because',
  'measured_at',
  'measured_by',
  'typed_by',
  'instrument',
  'instrument_serial',
  'calibration_due_on',
  'verdict',
  'is_proven',
  'limit_min',
  'limit_max',
  'origin',
  'reading_id',
  'replaced_by',
];

export function readingsCsv(view: PacketView): string {
  const instruments = new Map(view.record.run.instruments.map((one) => [one.instrumentId, one]));
  const rows = view.record.run.readings.map((reading) => {
    const instrument = instruments.get(reading.instrumentId ?? '');
    const calibration =
      instrument === undefined ? null : calibrationOfReading(instrument, reading.measuredAt, view.timeZone);
    const finding = view.leadingFinding(reading.readingId);
    const isSameQuantity = finding?.basis.limit?.quantity === reading.quantity;
    return [
      csvText(reading.stepKey),
      csvText(reading.itemKey),
      csvText(reading.quantity),
      csvText(quantityLabel(reading.quantity)),
      csvText(reading.point ?? ''),
      csvNumber(reading.sample),
      csvText(reading.typedText),
      csvText(reading.typedUnit),
      csvNumber(reading.valueOwn),
      csvText(isQuantityKey(reading.quantity) ? entryUnits(reading.quantity)[0].symbol : ''),
      csvText(reading.comparator === '=' ? '' : reading.comparator),
      csvText(reading.notMeasuredReason ?? ''),
      csvText(reading.measuredAt),
      csvText(view.nameOf(reading.measuredById)),
      csvText(view.nameOf(reading.typedById)),
      csvText(instrument?.label ?? ''),
      csvText(instrument?.serial ?? ''),
      csvText(calibration?.dueOn ?? ''),
      csvText(finding?.verdict ?? ''),
      finding ? String(finding.proof.proven) : '',
      csvNumber(isSameQuantity ? (finding?.basis.limit?.min ?? null) : null),
      csvNumber(isSameQuantity ? (finding?.basis.limit?.max ?? null) : null),
      csvText(reading.origin),
      csvText(reading.readingId),
      csvText(reading.supersededById ?? ''),
    ];
  });
  return csvFile([HEADER, ...rows]);
}
