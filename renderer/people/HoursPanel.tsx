/** Working hours by weekday, as people write them: `8–17`, with the break beside it. An empty day is free. */
import { WEEKDAYS } from '../../domain/text/calendarWords.ts';
import type { WorkforceMember } from '../../electron/contract/workforce.ts';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import type { FormReader } from '../form/FormReader.ts';
import { readSpan, spanWords } from '../form/readSpan.ts';
import { TextField } from '../form/TextField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';

type Hours = WorkforceMember['hours'][number];
type HoursForm = Readonly<Record<`day${1 | 2 | 3 | 4 | 5 | 6 | 7}` | `break${1 | 2 | 3 | 4 | 5 | 6 | 7}`, string>>;
const WEEKDAY_NUMBERS = [1, 2, 3, 4, 5, 6, 7] as const;

export function HoursPanel({ person, mayEdit }: { readonly person: WorkforceMember; readonly mayEdit: boolean }) {
  return (
    <Panel title="Working hours">{mayEdit ? <HoursForm person={person} /> : <HoursTable hours={person.hours} />}</Panel>
  );
}

function HoursTable({ hours }: { readonly hours: readonly Hours[] }) {
  return (
    <PlainTable
      caption="Working hours"
      rows={hours}
      keyOf={({ weekday }) => String(weekday)}
      columns={[
        { label: 'Day', cell: ({ weekday }) => WEEKDAYS[weekday - 1] },
        { label: 'Hours', cell: ({ fromMin, toMin }) => spanWords(fromMin, toMin) },
        { label: 'Break', cell: ({ breakFromMin, breakToMin }) => spanWords(breakFromMin, breakToMin) },
      ]}
    />
  );
}

function HoursForm({ person }: { readonly person: WorkforceMember }) {
  const { staffId } = person;
  const form = useDraftForm({
    draftKey: `hours.${staffId}`,
    operation: 'staff.setHours',
    initial: toForm(person.hours),
    toInput: (values, reader) => ({
      staffId,
      hours: WEEKDAY_NUMBERS.flatMap((weekday) => readDayHours(values, weekday, reader)),
    }),
    onDone: () => undefined,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Save the hours" failure={<ErrorText error={form.error} />}>
      <div className="lo-fields">
        {WEEKDAY_NUMBERS.flatMap((weekday) => [
          <TextField
            key={`day${weekday}`}
            form={form}
            name={`day${weekday}`}
            label={WEEKDAYS[weekday - 1] ?? ''}
            placeholder="free"
          />,
          <TextField
            key={`break${weekday}`}
            form={form}
            name={`break${weekday}`}
            label={`Break on ${WEEKDAYS[weekday - 1]}`}
            placeholder="none"
          />,
        ])}
      </div>
    </DraftFormFrame>
  );
}

function toForm(hours: readonly Hours[]): HoursForm {
  return Object.fromEntries(
    WEEKDAY_NUMBERS.flatMap((weekday) => {
      const one = hours.find((row) => row.weekday === weekday);
      return [
        [`day${weekday}`, spanWords(one?.fromMin ?? null, one?.toMin ?? null)],
        [`break${weekday}`, spanWords(one?.breakFromMin ?? null, one?.breakToMin ?? null)],
      ];
    }),
  ) as HoursForm;
}

function readDayHours(
  values: HoursForm,
  weekday: (typeof WEEKDAY_NUMBERS)[number],
  reader: FormReader,
): readonly Hours[] {
  const day = readSpan(values[`day${weekday}`]);
  const pause = readSpan(values[`break${weekday}`]);
  if (day === undefined) reader.fail(`day${weekday}`, 'From and to, for example 8:00–17:00.');
  if (pause === undefined) reader.fail(`break${weekday}`, 'From and to, for example 12:00–12:30.');
  if (day === null && pause) reader.fail(`break${weekday}`, 'A break without hours.');
  if (!day || pause === undefined) return [];
  return [{ weekday, ...day, breakFromMin: pause?.fromMin ?? null, breakToMin: pause?.toMin ?? null }];
}
