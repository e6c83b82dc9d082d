/** What has to be registered, by days left: narrowed by state, technician, maker and week, each line with what it lacks. */
import { NativeSelect } from '@mantine/core';
import { useState } from 'react';
import type { OutputOf } from '../../electron/contract/index.ts';
import { Answer } from '../kit/Answer.tsx';
import { Counting } from '../kit/Counting.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { PageTurner } from '../kit/PageTurner.tsx';
import { Screen } from '../kit/Screen.tsx';
import { keyOf, optionsOf } from '../kit/tradeWords.ts';
import { useKept } from '../kit/useKept.ts';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useAskAgain } from '../operations/useAskAgain.ts';
import { useOperation } from '../operations/useOperation.ts';
import { usePages } from '../operations/usePages.ts';
import { ChosenPackets } from './ChosenPackets.tsx';
import { DeadlineTable } from './DeadlineTable.tsx';
import type { DeadlineFilter } from './deadlineFilter.ts';
import { RebuildButton } from './RebuildButton.tsx';
import { FILTER_WORDS } from './stageWords.ts';
import { WeeksPanel } from './WeeksPanel.tsx';

export function DeadlinesScreen() {
  const [show, setShow] = useKept('deadlines.show', 'to-submit');
  const [staffId, setStaffId] = useKept('deadlines.staff', '');
  const [maker, setMaker] = useKept('deadlines.maker', '');
  const [week, setWeek] = useKept('deadlines.week', '');
  const { today } = useAppStatus();
  const narrowed = { staffId: staffId === '' ? null : staffId, maker: maker === '' ? null : maker };
  // Two questions: what can be chosen does not change with the choice, or the boxes would go while one types in them.
  const choices = useOperation('deadlines.get', {});
  const overview = useOperation('deadlines.get', narrowed);
  return (
    <Screen title="Deadlines" action={<RebuildButton />}>
      <Answer of={choices}>
        {(counts) => (
          <div className="lo-fields">
            <NativeSelect
              label="Show"
              value={show}
              data={[...optionsOf(FILTER_WORDS)]}
              onChange={(event) => setShow(event.currentTarget.value)}
            />
            <NativeSelect
              label="Technician"
              value={staffId}
              data={[{ value: '', label: 'everybody' }, ...counts.technicians.map(technicianOption)]}
              onChange={(event) => setStaffId(event.currentTarget.value)}
            />
            <NativeSelect
              label="Maker"
              value={maker}
              data={[{ value: '', label: 'all' }, ...counts.makers.map(makerOption)]}
              onChange={(event) => setMaker(event.currentTarget.value)}
            />
          </div>
        )}
      </Answer>
      <Answer of={overview}>
        {(counts) => <WeeksPanel counts={counts} today={today} week={week} onWeek={setWeek} />}
      </Answer>
      <Deadlines
        filter={{ ...narrowed, show: keyOf(FILTER_WORDS, show) ?? 'to-submit', week: week === '' ? null : week }}
      />
    </Screen>
  );
}

function Deadlines({ filter }: { readonly filter: DeadlineFilter }) {
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const pages = usePages(JSON.stringify(filter));
  const found = useOperation('deadlines.list', { ...filter, after: pages.after });
  useAskAgain(found, found.state === 'ready' && found.value.uncounted > 0);
  return (
    <Answer of={found}>
      {({ rows, next, uncounted }) => (
        <>
          {rows.length === 0 ? (
            <EmptyState
              title={filter.show === 'to-submit' && filter.week === null ? 'Nothing to submit' : 'Nothing like that'}
            >
              Every appliance with a date a maker’s window can run from appears here until its registration is
              confirmed.
            </EmptyState>
          ) : (
            <>
              <ChosenPackets filter={filter} chosen={chosen} onChoose={setChosen} />
              <DeadlineTable rows={rows} chosen={chosen} onChoose={setChosen} />
            </>
          )}
          <Counting uncounted={uncounted} />
          <PageTurner pages={pages} next={next} />
        </>
      )}
    </Answer>
  );
}

type Counts = OutputOf<'deadlines.get'>;

function technicianOption({ staffId, name, count }: Counts['technicians'][number]) {
  return { value: staffId, label: `${name} (${count})` };
}

function makerOption({ maker, count }: Counts['makers'][number]) {
  return { value: maker, label: `${maker} (${count})` };
}
