/** The due days of the reminders that stand, for any calendar. */
import { Button } from '@mantine/core';
import { saveText } from '../kit/downloadFile.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { useAct } from '../operations/useAct.ts';

export function CalendarButton() {
  const make = useAct('dueCalendars.export');
  return (
    <>
      <Button
        variant="default"
        loading={make.isBusy}
        onClick={async () => {
          const reply = await make.act({});
          if (reply.ok) saveText(reply.value.text, 'text/calendar', reply.value.fileName);
        }}
      >
        Due days as a calendar
      </Button>
      <ErrorText error={make.error} />
    </>
  );
}
