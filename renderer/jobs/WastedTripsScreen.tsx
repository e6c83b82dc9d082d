/** Wasted trips of the last year, by whose work was not ready. */
import { SegmentedControl } from '@mantine/core';
import { Answer } from '../kit/Answer.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { Screen } from '../kit/Screen.tsx';
import { WASTED_TRIP_WORDS } from '../kit/tradeWords.ts';
import { useKept } from '../kit/useKept.ts';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { addDays } from '../visits/week.ts';

const DAYS_BACK = 365;

export function WastedTripsScreen() {
  const { today } = useAppStatus();
  const [kept, setBy] = useKept('wasted-trips.by', 'builder');
  const by = kept === 'fitter' ? 'fitter' : 'builder';
  const report = useOperation('wastedTrips.report', { from: addDays(today, -DAYS_BACK), to: today, by });
  return (
    <Screen
      title="Wasted trips in the last year"
      crumbs={
        <RouteLink to="jobs" params={{}}>
          Jobs to book
        </RouteLink>
      }
      action={
        <SegmentedControl
          aria-label="Counted by"
          value={by}
          data={[
            { value: 'builder', label: 'By builder' },
            { value: 'fitter', label: 'By fitter' },
          ]}
          onChange={setBy}
        />
      }
    >
      <Answer of={report}>
        {({ rows }) =>
          rows.length === 0 ? (
            <EmptyState title="No wasted trip">
              A trip that could not do its work is recorded on its visit, with a reason that is counted here.
            </EmptyState>
          ) : (
            <PlainTable
              caption="Wasted trips"
              rows={rows}
              keyOf={({ partyId }) => partyId ?? 'nobody'}
              columns={[
                { label: by === 'builder' ? 'Builder' : 'Fitter', cell: ({ name }) => name ?? `no ${by} on file` },
                { label: 'Trips', cell: ({ trips }) => trips, isNumber: true },
                { label: 'Charged', cell: ({ chargeable }) => chargeable, isNumber: true },
                {
                  label: 'Why',
                  cell: ({ codes }) =>
                    codes.map(({ code, count }) => `${count} × ${WASTED_TRIP_WORDS[code]}`).join('; '),
                },
              ]}
            />
          )
        }
      </Answer>
    </Screen>
  );
}
