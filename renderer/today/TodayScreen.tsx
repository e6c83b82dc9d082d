/** What today asks of whoever is signed in: visits, open make-safes, registrations that press, jobs without a day. */
import { useMemo } from 'react';
import type { VisitRow } from '../../electron/contract/visits.ts';
import { readyWords } from '../jobs/readyWords.ts';
import { Answer } from '../kit/Answer.tsx';
import { capital } from '../kit/capital.ts';
import { dayWords } from '../kit/dayWords.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { Panel } from '../kit/Panel.tsx';
import { Screen } from '../kit/Screen.tsx';
import { JOB_KIND_WORDS } from '../kit/tradeWords.ts';
import { useAppStatus, useHasRole, useSignedIn } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { goTo } from '../route.ts';
import { Shortcut } from '../shortcuts/Shortcut.tsx';
import { VisitCard } from '../visits/VisitCard.tsx';
import { addDays } from '../visits/week.ts';
import { DecisionsPanel } from './DecisionsPanel.tsx';
import { FirstStepsPanel } from './FirstStepsPanel.tsx';
import { OddRecordsPanel } from './OddRecordsPanel.tsx';
import { OpenMakeSafesPanel } from './OpenMakeSafesPanel.tsx';
import { PressingRegistrationsPanel } from './PressingRegistrationsPanel.tsx';

/** As far ahead as the readiness call reaches: one to three days, over a weekend. */
const DAYS_AHEAD = 5;
/** Of everybody the next day is enough: the board shows the rest. */
const DAYS_AHEAD_OF_ALL = 1;

export function TodayScreen() {
  const { today } = useAppStatus();
  const person = useSignedIn();
  const plans = useHasRole('dispatcher', 'owner');
  const isOwner = useHasRole('owner');
  return (
    <Screen title={dayWords(today, { weekday: true })}>
      <OpenMakeSafesPanel />
      <DecisionsPanel />
      {plans ? <FirstStepsPanel /> : null}
      <div className="lo-columns">
        <VisitsPanel title={plans ? 'Visits' : 'My visits'} staffId={plans ? null : person.staffId} />
        {plans ? <JobsPanel /> : null}
      </div>
      {plans ? <PressingRegistrationsPanel /> : null}
      {isOwner ? <OddRecordsPanel /> : null}
    </Screen>
  );
}

function VisitsPanel({ title, staffId }: { readonly title: string; readonly staffId: string | null }) {
  const { today } = useAppStatus();
  // From yesterday on: a visit begun late and not finished is still today's.
  const ahead = staffId === null ? DAYS_AHEAD_OF_ALL : DAYS_AHEAD;
  const visits = useOperation('visits.list', { from: addDays(today, -7), to: addDays(today, ahead), staffId });
  return (
    <Panel
      title={title}
      action={
        <RouteLink to="visits" params={{}}>
          Diary
        </RouteLink>
      }
    >
      <Answer of={visits}>
        {(rows) => <VisitList rows={rows.filter((visit) => isStillToday(visit, today))} today={today} />}
      </Answer>
    </Panel>
  );
}

function VisitList({ rows, today }: { readonly rows: readonly VisitRow[]; readonly today: string }) {
  const days = useMemo(() => [...Map.groupBy(rows, (visit) => visit.plannedOn).entries()], [rows]);
  if (rows.length === 0) {
    return (
      <EmptyState title="No visit today or in the next days">
        Visits get here when a job is booked; see the diary for later ones.
      </EmptyState>
    );
  }
  const next = rows.find(({ state }) => state === 'started' || state === 'planned') ?? rows[0];
  return (
    <div className="lo-pairs">
      {next === undefined ? null : (
        <Shortcut keys="v" label="Open the next visit" onPress={() => goTo('visit', { visitId: next.visitId })} />
      )}
      {days.map(([day, visits]) => (
        <section key={day} aria-label={dayWords(day, { weekday: true })} className="lo-day" data-today={day === today}>
          <h3>{day === today ? 'Today' : dayWords(day, { weekday: true })}</h3>
          {visits.map((visit) => (
            <VisitCard key={visit.visitId} visit={visit} />
          ))}
        </section>
      ))}
    </div>
  );
}

function isStillToday(visit: VisitRow, today: string): boolean {
  if (visit.state === 'cancelled') return false;
  if (visit.plannedOn >= today) return true;
  return visit.state !== 'signed' && visit.state !== 'finished';
}

function JobsPanel() {
  const jobs = useOperation('jobs.list', {});
  return (
    <Panel
      title="Jobs to book"
      action={
        <RouteLink to="jobs" params={{}}>
          All
        </RouteLink>
      }
    >
      <Answer of={jobs}>
        {(rows) =>
          rows.length === 0 ? (
            <EmptyState title="Every job is booked">A job is opened on its appliance.</EmptyState>
          ) : (
            <ul className="lo-gaps">
              {rows.slice(0, 8).map((row) => (
                <li key={row.jobId}>
                  <RouteLink to="job" params={{ jobId: row.jobId }}>
                    {capital(JOB_KIND_WORDS[row.kind])}: {row.customerName ?? row.serial}, {row.city}
                  </RouteLink>
                  <span className="lo-faint">{readyWords(row)}</span>
                </li>
              ))}
            </ul>
          )
        }
      </Answer>
    </Panel>
  );
}
