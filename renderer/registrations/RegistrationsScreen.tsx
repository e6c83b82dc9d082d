/** Registrations a page at a time, by days left: nothing may slip past its last day. */
import { Switch } from '@mantine/core';
import type { RegistrationRow } from '../../electron/contract/registrations.ts';
import { Answer } from '../kit/Answer.tsx';
import { Counting } from '../kit/Counting.tsx';
import { DateText } from '../kit/DateText.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { PageTurner } from '../kit/PageTurner.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useKept } from '../kit/useKept.ts';
import { useAskAgain } from '../operations/useAskAgain.ts';
import { useOperation } from '../operations/useOperation.ts';
import { usePages } from '../operations/usePages.ts';
import { RouteLink } from '../RouteLink.tsx';
import { DaysLeft } from './DaysLeft.tsx';
import { deadlineWords } from './deadlineWords.ts';
import { BY_WORDS, STATE_WORDS } from './registrationWords.ts';

export function RegistrationsScreen() {
  const [shown, setShown] = useKept('registrations.shown', 'open');
  const openOnly = shown === 'open';
  const pages = usePages(shown);
  const found = useOperation('registrations.list', { openOnly, after: pages.after });
  useAskAgain(found, found.state === 'ready' && found.value.uncounted > 0);
  return (
    <Screen
      title="Registrations"
      action={
        <Switch
          size="md"
          label="Confirmed ones too"
          checked={!openOnly}
          onChange={(event) => setShown(event.currentTarget.checked ? 'all' : 'open')}
        />
      }
    >
      <Answer of={found}>
        {({ rows, next, uncounted }) =>
          rows.length === 0 && pages.isFirst ? (
            <EmptyState title={openOnly ? 'Nothing open' : 'No registration yet'}>
              A registration appears here as soon as a startup has begun, with the last day the maker’s sheet gives it.
              It stays until the maker has confirmed it.
            </EmptyState>
          ) : (
            <>
              <RegistrationTable rows={rows} />
              <Counting uncounted={uncounted} />
              <PageTurner pages={pages} next={next} />
            </>
          )
        }
      </Answer>
    </Screen>
  );
}

export function RegistrationTable({ rows }: { readonly rows: readonly RegistrationRow[] }) {
  return (
    <PlainTable
      caption="Registrations"
      rows={rows}
      keyOf={(row) => row.applianceId}
      columns={[
        {
          label: 'Appliance',
          cell: (row) => (
            <RouteLink to="registration" params={{ applianceId: row.applianceId }}>
              {row.maker} {row.model}, {row.serial}
            </RouteLink>
          ),
        },
        {
          label: 'Last day',
          cell: (row) => (
            <>
              {isToSubmit(row) ? <DaysLeft deadline={row.deadline} /> : null}
              {row.deadline === null ? null : <div className="lo-faint">{deadlineWords(row.deadline)}</div>}
            </>
          ),
        },
        {
          label: 'State',
          cell: (row) => (
            <>
              {STATE_WORDS[row.state]}
              {row.missingCount === null || row.missingCount === 0 ? null : (
                <div>{row.missingCount === 1 ? '1 thing missing' : `${row.missingCount} things missing`}</div>
              )}
            </>
          ),
        },
        {
          label: 'Who registers',
          cell: (row) => (
            <>
              {BY_WORDS[row.by]}
              {row.followUpOn === null ? null : (
                <div className="lo-faint">
                  follow up <DateText day={row.followUpOn} />
                </div>
              )}
            </>
          ),
        },
        {
          label: 'Customer',
          cell: (row) => (
            <>
              {row.customerName}
              <div className="lo-faint">{[row.street, row.city].filter(Boolean).join(', ')}</div>
            </>
          ),
        },
      ]}
    />
  );
}

/** Once it is with the maker no day of ours runs out any more. */
function isToSubmit({ state }: RegistrationRow): boolean {
  return state === 'recording' || state === 'ready';
}
