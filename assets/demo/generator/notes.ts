/** What a technician wrote down on a visit: the truth, seen through instruments, item by item of the sheet. */
import { Temporal } from 'temporal-polyfill';
import type { ModelSheet, SheetStep, StepItem } from '../../../domain/procedure/modelSheet.ts';
import { entryUnits } from '../../../domain/quantity/entryUnits.ts';
import { type QuantityKey, quantitySpec } from '../../../domain/quantity/quantities.ts';
import type { RecordedRun } from '../../../electron/demo/recordedRun.ts';
import { SECONDS_PER_ENTRY, secondsToRead } from '../../../electron/demo/siteTimes.ts';
import type { Random } from './random.ts';
import type { BoilerFacts, VisitTruth } from './truth.ts';

/** Standard deviations of good portable instruments: EN 50379-class figures halved, common practice for the rest. */
const INSTRUMENT_NOISE: Partial<Record<QuantityKey, number>> = {
  o2DryVolPct: 0.05,
  co2DryVolPct: 0.05,
  coPpm: 1,
  flueGasC: 0.3,
  intakeAirC: 0.3,
  supplyC: 0.3,
  returnC: 0.3,
  inletPressureMbarG: 0.05,
  systemPressureBarG: 0.01,
  meterSeconds: 0.4,
  waterPh: 0.05,
  conductivityUsPerCm: 6,
};

export type NotesContext = {
  readonly facts: BoilerFacts;
  readonly truth: VisitTruth;
  readonly serial: string;
  readonly technician: string;
  readonly occupant: string;
  readonly startedAt: string;
  readonly nextServiceOn: string;
  readonly firstYearCheckOn: string;
  readonly random: Random;
};

export function writeNotes(steps: readonly SheetStep[], context: NotesContext): RecordedRun {
  const notes = {
    serial: context.serial,
    startedAt: context.startedAt,
    answers: {} as Record<string, string>,
    readings: {} as RecordedRun['readings'],
    series: {} as RecordedRun['series'],
    photos: {} as Record<string, string>,
    signOffs: {} as Record<string, string>,
  };
  let elapsedS = 0;
  let filledUpBar = 0;
  for (const item of steps.flatMap((step) => step.items)) {
    elapsedS += SECONDS_PER_ENTRY + (item.kind === 'hold' ? item.seconds : 0);
    switch (item.kind) {
      case 'confirm':
        notes.answers[item.key] = 'yes';
        break;
      case 'choose':
        notes.answers[item.key] = choose(item, context);
        break;
      case 'note':
        notes.answers[item.key] = write(item, context, elapsedS);
        break;
      case 'witness':
        notes.answers[item.key] = item.by === 'occupant' ? context.occupant : context.technician;
        break;
      case 'read': {
        const entry =
          item.onlyFor?.foundOutside === undefined
            ? filledUp(item, read(item.quantity, item.point, context))
            : leftAs(item);
        if (entry === null) break;
        notes.readings[item.key] = entry;
        elapsedS += secondsOf(item.quantity, entry);
        break;
      }
      case 'series':
        notes.series[item.key] = sample(item, context.facts.sheet, context);
        break;
      case 'photo':
        notes.photos[item.key] = pictureOf(item.key);
        break;
      case 'sign-off':
        notes.signOffs[item.key] = item.by === 'occupant' ? context.occupant : context.technician;
        break;
    }
  }
  return notes;

  /** Filled up to a little over the sheet's least; null: it was found well, and stays. */
  function leftAs(item: ReadItem): Entry | null {
    const found = notes.readings[item.onlyFor?.foundOutside ?? ''];
    const limit = context.facts.sheet.limits.find(
      ({ quantity, point }) => quantity === item.quantity && point === item.point,
    );
    if (found === undefined || !('text' in found) || limit?.min === undefined) return null;
    if (Number(found.text) >= limit.min) return null;
    const text = (limit.min + 2 * (limit.edge ?? 0.05)).toFixed(2);
    filledUpBar = Number(text) - Number(found.text);
    return { ...found, text };
  }

  /** What was filled up cold is there hot as well. */
  function filledUp({ quantity, point }: ReadItem, entry: Entry): Entry {
    if (quantity !== 'systemPressureBarG' || point !== 'hot' || !('text' in entry)) return entry;
    return { ...entry, text: (Number(entry.text) + filledUpBar).toFixed(2) };
  }
}

/** Each item has its own picture: one that shows what is asked for. */
const PICTURES: Readonly<Record<string, string>> = {
  'plate-photo': 'data-plate.png',
  'conversion-photo': 'conversion.png',
  'meter-photo': 'meter.png',
  'vent-joint-photo': 'vent-joint.png',
  'vent-end-photo': 'vent-end.png',
  'hatches-photo': 'hatch.png',
  'condensate-photo': 'condensate.png',
  'casing-photo': 'inside.png',
  'gauge-cold-photo': 'gauge-cold.png',
  'gauge-hot-photo': 'gauge-hot.png',
  'treatment-photo': 'treatment.png',
  'high-analyser-photo': 'analyser-high.png',
  'mid-analyser-photo': 'analyser-mid.png',
  'low-analyser-photo': 'analyser-low.png',
  'high-as-found-analyser-photo': 'analyser-high-found.png',
  'low-as-found-analyser-photo': 'analyser-low-found.png',
  'whole-photo': 'installation.png',
};

function pictureOf(itemKey: string): string {
  const found = PICTURES[itemKey];
  if (found === undefined) throw new Error(`no picture is drawn for ${itemKey}`);
  return found;
}

function choose(item: Extract<StepItem, { kind: 'choose' }>, { facts }: NotesContext): string {
  const has = (value: string): boolean => item.options.some((option) => option.value === value);
  const wanted: Readonly<Record<string, string>> = {
    'plate-fuel': facts.fuel,
    'tag-fuel': facts.fuel,
    'hot-water-kind': facts.hotWater,
    'self-calibrates': facts.sheet.appliance.burner === 'fixed-ratio' ? 'no' : 'yes',
    occupant: 'present',
    registration: 'office',
    'reset-used': 'used',
    adjusted: 'no',
  };
  const named = wanted[item.key];
  if (named !== undefined && has(named)) return named;
  const fine = item.options.find((option) => option.outcome === 'fine') ?? item.options[0];
  if (fine === undefined) throw new Error(`${item.key} has no options`);
  return fine.value;
}

function write(item: Extract<StepItem, { kind: 'note' }>, context: NotesContext, elapsedS: number): string {
  if (item.identifies === 'serial') return context.serial;
  if (item.holds === 'time') return wallTime(context.startedAt, elapsedS - SECONDS_TO_WRITE_DOWN);
  if (item.holds === 'date') return item.key === 'first-year-check' ? context.firstYearCheckOn : context.nextServiceOn;
  const texts: Readonly<Record<string, string>> = {
    'vent-material': `${context.facts.vent}, rated ${context.facts.ratedInputKw > 60 ? 400 : 110} °C`,
    flush: 'flushed twice, 20 minutes each, ran clear',
    treatment: 'inhibitor, one litre',
    'heating-value-source': 'utility, monthly mean',
    'safety-how': 'each tripped in turn at the control',
    'safety-lockout-time': '4 s',
    'lp-regulators': 'two stages, both new',
    'timers-and-limits': 'pump overrun 3 min, least off-time 5 min',
    'floor-ramp': '25 °C for three days, then 5 °C a day',
    'floor-humidity': '45 %',
  };
  return texts[item.key] ?? 'none';
}

function secondsOf(quantity: QuantityKey, entry: RecordedRun['readings'][string] | undefined): number {
  return entry !== undefined && 'text' in entry ? secondsToRead(quantity, entry.text) : 0;
}

/** What happened is written down a little later. */
const SECONDS_TO_WRITE_DOWN = 240;

/** On the clock of the place. */
function wallTime(startedAt: string, elapsedS: number): string {
  const at = Temporal.Instant.from(startedAt).add({ seconds: elapsedS }).toZonedDateTimeISO('America/Halifax');
  return at.toPlainTime().toString().slice(0, 5);
}

type ReadItem = Extract<StepItem, { kind: 'read' }>;
type Entry = { readonly text: string; readonly unit: string } | { readonly notMeasured: string };

function read(quantity: QuantityKey, point: string | null, context: NotesContext): Entry {
  const value = context.truth.at(quantity, point);
  const noMeter = quantity.startsWith('meter') && context.facts.meterDialM3 === null;
  if (noMeter) return { notMeasured: 'a tank has no meter' };
  return value === null ? { notMeasured: 'no test point fitted' } : typed(quantity, value, context.random);
}

function sample(
  item: Extract<StepItem, { kind: 'series' }>,
  sheet: ModelSheet,
  context: NotesContext,
): RecordedRun['series'][string] {
  const count = Math.max(2, sheet.steady.minSamples);
  return Object.fromEntries(
    item.quantities.map((quantity) => {
      const value = context.truth.at(quantity, item.firingPoint);
      if (value === null) throw new Error(`nothing is known of ${quantity} at ${item.firingPoint}`);
      return [quantity, Array.from({ length: count }, () => typed(quantity, value, context.random))];
    }),
  );
}

export function typed(
  quantity: QuantityKey,
  value: number,
  random: Random,
): { readonly text: string; readonly unit: string } {
  const spec = quantitySpec(quantity);
  const noisy = value + random.noise(INSTRUMENT_NOISE[quantity] ?? 0);
  const kept = Math.min(spec.possible[1], Math.max(spec.possible[0], noisy));
  return { text: kept.toFixed(spec.decimals), unit: entryUnits(quantity)[0].symbol };
}
