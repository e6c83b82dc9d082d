/** What was answered, as it reads in one line; null when nothing was. */
import { isFromPaper } from '../../../domain/procedure/isFromPaper.ts';
import type { StepItem } from '../../../domain/procedure/modelSheet.ts';
import { COPIED_ANSWER } from '../../../domain/procedure/progress/listProgress.ts';
import type { RecordedAnswer, RecordedReading, RunRecord } from '../../../domain/procedure/runRecord.ts';
import { formatQuantity } from '../../../domain/quantity/formatQuantity.ts';
import type { UnitSystem } from '../../../domain/quantity/preferredUnit.ts';
import { quantitySpec } from '../../../domain/quantity/quantities.ts';
import { assertNever } from '../../../domain/result.ts';
import type { RunView } from '../../../electron/contract/runs.ts';
import { timeOfDay } from '../clock/timeOfDay.ts';
import { dayInWords } from '../note/parseDay.ts';

export function answerText(item: StepItem, view: Pick<RunView, 'record'>, unitSystem: UnitSystem): string | null {
  const text = plainAnswerText(item, view, unitSystem);
  return text !== null && isFromPaper(view.record, item.key) ? `${text} (from paper)` : text;
}

function plainAnswerText(item: StepItem, { record }: Pick<RunView, 'record'>, unitSystem: UnitSystem): string | null {
  const answer = newestAnswer(record, item.key);
  if (answer !== null && answer.value === null) return givenAnswerText(item, answer);
  switch (item.kind) {
    case 'confirm':
    case 'choose':
    case 'note':
    case 'witness':
      return answer === null ? null : givenAnswerText(item, answer);
    case 'read': {
      const [reading] = liveReadings(record, item.key).slice(-1);
      return reading === undefined ? null : readingText(reading, unitSystem);
    }
    case 'series': {
      const readings = liveReadings(record, item.key);
      if (readings.length === 0) return null;
      return item.quantities
        .flatMap((quantity) => {
          const last = readings.findLast((one) => one.quantity === quantity);
          return last === undefined ? [] : [`${quantitySpec(quantity).label} ${readingText(last, unitSystem)}`];
        })
        .join(' · ');
    }
    case 'hold': {
      const hold = record.holds.findLast((one) => one.itemKey === item.key);
      if (hold?.endedAt == null) return null;
      return `${timeOfDay(hold.startedAt, record.site.timeZone)}–${timeOfDay(hold.endedAt, record.site.timeZone)}`;
    }
    case 'tuning': {
      const tuning = record.tunings.findLast((one) => one.itemKey === item.key);
      return tuning?.finishedAt == null ? null : `finished ${timeOfDay(tuning.finishedAt, record.site.timeZone)}`;
    }
    case 'parts':
    case 'lockouts': {
      const rows: readonly { readonly itemKey: string }[] =
        (item.kind === 'parts' ? record.parts : record.lockouts) ?? [];
      const count = rows.filter((one) => one.itemKey === item.key).length;
      if (count > 0) return String(count);
      return answer === null || answer.value === COPIED_ANSWER ? null : answer.value;
    }
    case 'photo': {
      const count = record.photos.filter((one) => one.itemKey === item.key).length;
      return count === 0 ? null : count === 1 ? '1 photo' : `${count} photos`;
    }
    case 'sign-off': {
      const signOff = record.signOffs.findLast((one) => one.itemKey === item.key);
      return signOff === undefined ? null : `${signOff.name}, ${timeOfDay(signOff.at, record.site.timeZone)}`;
    }
    default:
      return assertNever(item);
  }
}

/** One answer, whether it still counts or not. */
export function givenAnswerText(item: StepItem, { value, reason }: Pick<RecordedAnswer, 'value' | 'reason'>): string {
  if (value === null) return `not possible: ${reason ?? ''}`;
  const because = reason ? ` (${reason})` : '';
  switch (item.kind) {
    case 'confirm':
      return `${CONFIRMED[value] ?? value}${because}`;
    case 'choose':
      return `${item.options.find((one) => one.value === value)?.label ?? value}${because}`;
    case 'note':
      return item.holds === 'date' ? dayInWords(value) : value;
    case 'parts':
    case 'lockouts':
      return value === COPIED_ANSWER ? `from paper: ${reason ?? ''}` : value;
    default:
      return `${value}${because}`;
  }
}

/** The over-range mark stays: “>4000” is not 4000. */
export function readingText(reading: RecordedReading, unitSystem: UnitSystem): string {
  if (reading.valueOwn === null) return `not measured: ${reading.notMeasuredReason ?? ''}`;
  // As typed where it was typed in the reader's own unit: 4.55 must not come back as 4.6.
  const shown = formatQuantity(reading.quantity, reading.valueOwn, unitSystem);
  const isPlain = reading.typedUnit === shown.unit && /^\s*[\d.,]+\s*$/.test(reading.typedText);
  const text = isPlain ? reading.typedText.trim() : shown.text;
  const { unit } = shown;
  return `${reading.comparator === '=' ? '' : reading.comparator}${text}${unit === '' ? '' : ` ${unit}`}`;
}

export function liveReadings(record: Pick<RunRecord, 'readings'>, itemKey: string): readonly RecordedReading[] {
  return record.readings
    .filter((one) => one.itemKey === itemKey && one.supersededById === null)
    .sort((one, other) => one.sample - other.sample);
}

export function newestAnswer(record: Pick<RunRecord, 'answers'>, itemKey: string): RecordedAnswer | null {
  return record.answers.findLast((one) => one.itemKey === itemKey) ?? null;
}

const CONFIRMED: Readonly<Record<string, string>> = { yes: 'yes', no: 'no', 'not-applicable': 'not applicable' };
