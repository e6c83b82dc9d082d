/** The diary: a week of visits by day, for everybody or one person. */
import { Button, Group, NativeSelect } from '@mantine/core';
import { Answer } from '../kit/Answer.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useKept } from '../kit/useKept.ts';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { goTo } from '../route.ts';
import { useShortcut } from '../shortcuts/Shortcuts.tsx';
import { VisitCard } from './VisitCard.tsx';
import { addDays, isDay, weekOf } from './week.ts';

export function DiaryScreen({ day: wanted }: { readonly day: string | null }) {
  const { today } = useAppStatus();
  const [staffId, setStaffId] = useKept('diary.staff', '');
  const day = wanted !== null && isDay(wanted) ? wanted : today;
  const week = weekOf(day);
  const [from = day, to = day] = [week[0], week[6]];
  const visits = useOperation('visits.list', { from, to, staffId: staffId === '' ? null : staffId });
  const staff = useOperation('staff.list', {});
  const turn = (days: number) => goTo('visits', { day: addDays(day, days) });
  useShortcut('[', 'Week before', () => turn(-7));
  useShortcut(']', 'Week after', () => turn(7));
  return (
    <Screen
      title={`Week of ${dayWords(from)}`}
      action={
        <Group gap="sm" align="end">
          <NativeSelect
            label="Whose"
            value={staffId}
            data={[
              { value: '', label: 'Everybody' },
              ...(staff.state === 'ready'
                ? staff.value.map((person) => ({ value: person.staffId, label: person.name }))
                : []),
            ]}
            onChange={(event) => setStaffId(event.currentTarget.value)}
          />
          <Button variant="default" onClick={() => turn(-7)}>
            Week before
          </Button>
          <Button variant="default" onClick={() => goTo('visits', { day: today })}>
            This week
          </Button>
          <Button variant="default" onClick={() => turn(7)}>
            Week after
          </Button>
        </Group>
      }
    >
      <Answer of={visits}>
        {(rows) => (
          <>
            {rows.length === 0 ? (
              <EmptyState title="No visit this week">
                Visits get here when a job is booked: see{' '}
                <RouteLink to="jobs" params={{}} className="lo-link-inline">
                  Jobs to book
                </RouteLink>
                .
              </EmptyState>
            ) : null}
            <div className="lo-days">
              {week.map((date) => (
                <section key={date} className="lo-day" data-today={date === today} aria-labelledby={`day-${date}`}>
                  <h2 id={`day-${date}`}>
                    {dayWords(date, { weekday: true })}
                    {date === today ? ' (today)' : ''}
                  </h2>
                  {rows
                    .filter((visit) => visit.plannedOn === date)
                    .map((visit) => (
                      <VisitCard key={visit.visitId} visit={visit} />
                    ))}
                  {rows.some((visit) => visit.plannedOn === date) ? null : (
                    <p className="lo-faint" style={{ margin: 0 }}>
                      nothing
                    </p>
                  )}
                </section>
              ))}
            </div>
          </>
        )}
      </Answer>
    </Screen>
  );
}
