/** Who would be reminded today, and whether they agreed to it. Nothing goes to anybody who did not. */
import type { ReminderRow } from '../../electron/contract/dues.ts';
import { Answer } from '../kit/Answer.tsx';
import { DateText } from '../kit/DateText.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { PageTurner } from '../kit/PageTurner.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { usePages } from '../operations/usePages.ts';
import { RouteLink } from '../RouteLink.tsx';
import { stageWords } from './dueWords.ts';

export function RemindersPanel() {
  const pages = usePages('reminders');
  const found = useOperation('reminders.list', { limit: 20, after: pages.after });
  return (
    <Panel
      title="Reminders that stand today"
      action={
        <RouteLink to="messages" params={{}}>
          Letters and e-mails
        </RouteLink>
      }
    >
      <Answer of={found}>
        {({ rows, next }) => (
          <>
            {rows.length === 0 ? (
              <EmptyState title="Nobody to remind today">
                60, 30, 14 and 3 days before a service, then weekly until its latest day; a booking ends it.
              </EmptyState>
            ) : (
              <Reminders rows={rows} />
            )}
            <PageTurner pages={pages} next={next} />
          </>
        )}
      </Answer>
    </Panel>
  );
}

function Reminders({ rows }: { readonly rows: readonly ReminderRow[] }) {
  return (
    <PlainTable
      caption="Reminders"
      rows={rows}
      keyOf={({ key }) => key}
      columns={[
        {
          label: 'Whom',
          cell: ({ customerId, partyName }) =>
            customerId === null ? (
              partyName
            ) : (
              <RouteLink to="customer" params={{ customerId }}>
                {partyName}
              </RouteLink>
            ),
        },
        { label: 'Which', cell: ({ stage }) => stageWords(stage) },
        { label: 'Due', cell: ({ dueOn }) => <DateText day={dueOn} weekday /> },
        { label: 'Latest day', cell: ({ latestOn }) => <DateText day={latestOn} weekday /> },
        { label: 'Appliance', cell: ({ maker, model, serial }) => `${maker} ${model}, ${serial}` },
        {
          label: 'Agreed to',
          cell: ({ channels }) =>
            channels.length === 0 ? <span className="lo-faint">nothing: not reminded</span> : channels.join(', '),
        },
      ]}
    />
  );
}
