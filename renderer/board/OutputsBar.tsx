/** Day sheets, calendar files and the week on paper, for what the board shows. */
import { Button, Group, NativeSelect, Popover, Stack } from '@mantine/core';
import { useState } from 'react';
import { dayWords } from '../kit/dayWords.ts';
import { downloadAttachment, saveText } from '../kit/downloadFile.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { useCore } from '../operations/CoreAccess.tsx';
import { useAct } from '../operations/useAct.ts';
import { addDays, mondayOf } from '../visits/week.ts';
import type { BoardRowModel } from './boardModel.ts';

/** A calendar file reaches this far, so that it needs to be read again only now and then. */
const CALENDAR_DAYS = 60;

const ALL = 'all';

export function OutputsBar({
  rows,
  days,
  today,
}: {
  readonly rows: readonly BoardRowModel[];
  readonly days: readonly string[];
  readonly today: string;
}) {
  const core = useCore();
  const daySheet = useAct('daySheets.build');
  const week = useAct('weekOverviews.build');
  const calendar = useAct('calendars.export');
  const [staffId, setStaffId] = useState(ALL);
  const [day, setDay] = useState(today);
  const [said, setSaid] = useState('');
  const save = async (attachmentId: string) => {
    const problem = await downloadAttachment(core, attachmentId);
    setSaid(problem === null ? 'saved' : 'the file could not be read');
  };
  const chosenDay = chosenDayOf(days, day);
  const isAll = staffId === ALL;
  const workers = rows.filter(({ days: shown }) =>
    shown.some(({ on, blocks }) => on === chosenDay && blocks.length > 0),
  );
  const wanted = isAll ? workers.map(({ technician }) => technician.staffId) : [staffId];
  const printSheets = async () => {
    if (wanted.length === 0) setSaid('nobody has a visit that day');
    // One after the other: a browser takes files in turn.
    for (const one of wanted) {
      const reply = await daySheet.act({ staffId: one, on: chosenDay });
      if (!reply.ok) return;
      await save(reply.value.attachmentId);
    }
  };
  const writeCalendars = async () => {
    const people = isAll ? rows.map(({ technician }) => technician.staffId) : [staffId];
    for (const one of people) {
      const reply = await calendar.act({ staffId: one, from: chosenDay, to: addDays(chosenDay, CALENDAR_DAYS) });
      if (!reply.ok) return;
      saveText(reply.value.text, 'text/calendar', reply.value.fileName);
      setSaid('saved');
    }
  };
  return (
    <Popover position="bottom-end" trapFocus width={380}>
      <Popover.Target>
        <Button variant="default">Print and export</Button>
      </Popover.Target>
      <Popover.Dropdown aria-label="Print and export">
        <Stack gap="sm">
          <NativeSelect
            label="Whose"
            value={staffId}
            data={[
              { value: ALL, label: 'everybody, a file each' },
              ...rows.map(({ technician }) => ({ value: technician.staffId, label: technician.name })),
            ]}
            onChange={(event) => setStaffId(event.currentTarget.value)}
          />
          <NativeSelect
            label="Day"
            value={chosenDay}
            data={days.map((on) => ({ value: on, label: dayWords(on, { weekday: true }) }))}
            onChange={(event) => setDay(event.currentTarget.value)}
          />
          <Group gap="sm">
            <Button variant="default" loading={daySheet.isBusy} onClick={() => void printSheets()}>
              {isAll ? 'Day sheets (PDF)' : 'Day sheet (PDF)'}
            </Button>
            <Button variant="default" loading={calendar.isBusy} onClick={() => void writeCalendars()}>
              {isAll ? 'Calendar files' : 'Calendar file'}
            </Button>
            <Button
              variant="default"
              loading={week.isBusy}
              onClick={async () => {
                const reply = await week.act({ from: mondayOf(chosenDay) });
                if (reply.ok) await save(reply.value.attachmentId);
              }}
            >
              Week (PDF)
            </Button>
          </Group>
          <span role="status" className="lo-faint">
            {said}
          </span>
          <ErrorText error={daySheet.error} />
          <ErrorText error={calendar.error} />
          <ErrorText error={week.error} />
        </Stack>
      </Popover.Dropdown>
    </Popover>
  );
}

/** The day asked for while it is shown, else the first that is. */
function chosenDayOf(days: readonly string[], day: string): string {
  return days.includes(day) ? day : (days[0] ?? '');
}
