/** Jobs that nobody has booked yet, what presses first, with what still stands in the way. */
import type { OutputOf } from '../../electron/contract/index.ts';
import { Answer } from '../kit/Answer.tsx';
import { capital } from '../kit/capital.ts';
import { InstantText } from '../kit/DateText.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { MakeSafeCount } from '../kit/MakeSafeCount.tsx';
import { NoticeCount } from '../kit/NoticeCount.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { Screen } from '../kit/Screen.tsx';
import { JOB_KIND_WORDS, OUTCOME_WORDS } from '../kit/tradeWords.ts';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { pressWords } from './pressWords.ts';

export function JobsScreen() {
  const jobs = useOperation('jobs.list', {});
  const { today } = useAppStatus();
  return (
    <Screen
      title="Jobs to book"
      action={
        <RouteLink to="wasted-trips" params={{}}>
          Wasted trips
        </RouteLink>
      }
    >
      <Answer of={jobs}>
        {(rows) =>
          rows.length === 0 ? (
            <EmptyState title="Every job is booked">
              A job is opened on its appliance: find it under{' '}
              <RouteLink to="appliances" params={{}} className="lo-link-inline">
                Appliances
              </RouteLink>{' '}
              and press “New startup” or “New service”. It waits here until it has a day.
            </EmptyState>
          ) : (
            <PlainTable
              caption="Jobs to book"
              rows={rows}
              keyOf={(row) => row.jobId}
              columns={[
                {
                  label: 'Job',
                  cell: (row) => (
                    <RouteLink to="job" params={{ jobId: row.jobId }}>
                      {capital(JOB_KIND_WORDS[row.kind])}
                      {row.returnBecause === null ? '' : `, return trip (${OUTCOME_WORDS[row.returnBecause]})`}:{' '}
                      {row.maker} {row.model}
                    </RouteLink>
                  ),
                },
                { label: 'Customer', cell: (row) => row.customerName ?? '' },
                { label: 'Where', cell: (row) => [row.street, row.city].filter(Boolean).join(', ') },
                {
                  label: 'Readiness',
                  cell: (row) =>
                    row.kind !== 'startup' ? (
                      ''
                    ) : row.openReadiness.length + row.agedReadiness.length === 0 ? (
                      <span style={{ color: 'var(--lo-fir)' }}>ready</span>
                    ) : (
                      <span style={{ color: 'var(--lo-ochre)' }}>
                        {row.openReadiness.length === 0
                          ? `${row.agedReadiness.length} to ask again`
                          : `${row.openReadiness.length} open`}
                      </span>
                    ),
                },
                { label: 'Presses', cell: (row) => <Press of={row} today={today} /> },
                { label: 'Opened', cell: (row) => <InstantText at={row.openedAt} /> },
                {
                  label: 'Safety',
                  cell: (row) => (
                    <>
                      <MakeSafeCount count={row.openMakeSafes} /> <NoticeCount of={row.openNotices} />
                    </>
                  ),
                },
              ]}
            />
          )
        }
      </Answer>
    </Screen>
  );
}

function Press({ of, today }: { readonly of: OutputOf<'jobs.list'>[number]; readonly today: string }) {
  const { words, isUrgent } = pressWords(of, today);
  return <span style={{ color: isUrgent ? 'var(--lo-ochre)' : undefined }}>{words}</span>;
}
