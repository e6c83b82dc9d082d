/** Letters, e-mail drafts and texts: looked at, made into files, and what came of each. Nothing is sent from here. */
import { NativeSelect } from '@mantine/core';
import { Screen } from '../kit/Screen.tsx';
import { keyOf, optionsOf } from '../kit/tradeWords.ts';
import { useKept } from '../kit/useKept.ts';
import { RouteLink } from '../RouteLink.tsx';
import { CalendarButton } from './CalendarButton.tsx';
import { LogPanel } from './LogPanel.tsx';
import { type About, PreparePanel } from './PreparePanel.tsx';
import { WordingPanel } from './WordingPanel.tsx';

export function MessagesScreen() {
  const [kept, setAbout] = useKept('messages.about', 'reminders');
  const about = keyOf(ABOUT_WORDS, kept) ?? 'reminders';
  return (
    <Screen
      title="Letters and e-mails"
      crumbs={
        <>
          <RouteLink to="service-due" params={{}}>
            Service due
          </RouteLink>
          <RouteLink to="recalls" params={{}}>
            Notices
          </RouteLink>
        </>
      }
      action={
        <NativeSelect
          label="About"
          value={about}
          data={[...optionsOf(ABOUT_WORDS)]}
          onChange={(event) => setAbout(event.currentTarget.value)}
        />
      }
    >
      <PreparePanel
        key={about}
        title={TITLES[about]}
        about={about === 'reminders' ? { kind: 'reminders' } : { kind: 'appointments', which: about }}
        firstChannel={about === 'reminders' ? 'letter' : 'text'}
        empty={EMPTY[about]}
        action={about === 'reminders' ? <CalendarButton /> : undefined}
      />
      <LogPanel />
      <WordingPanel />
    </Screen>
  );
}

type Subject = 'reminders' | Extract<About, { kind: 'appointments' }>['which'];

const ABOUT_WORDS: Readonly<Record<Subject, string>> = {
  reminders: 'services and first-year contacts',
  appointment: 'visits booked',
  'appointment-reminder': 'visits soon',
  'on-the-way': 'on the way today',
};

const TITLES: Readonly<Record<Subject, string>> = {
  reminders: 'Reminders to prepare',
  appointment: 'Bookings to confirm',
  'appointment-reminder': 'Visits to bring back to mind',
  'on-the-way': 'On the way today',
};

const EMPTY: Readonly<Record<Subject, string>> = {
  reminders:
    'Reminders that stand and whose person agreed to be reminded in this way get here. Consent is kept on the customer.',
  appointment:
    'Visits that are booked, not pencilled, get here, unless the customer said no to hearing about appointments.',
  'appointment-reminder': 'Booked visits get here three days before, the day before, and on the day.',
  'on-the-way': 'Today’s visits get here until they begin.',
};
