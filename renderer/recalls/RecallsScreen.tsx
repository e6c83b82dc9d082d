/** Notices of makers and authorities, with how many appliances each is about. */
import { Button } from '@mantine/core';
import { useState } from 'react';
import { Answer } from '../kit/Answer.tsx';
import { DateText } from '../kit/DateText.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { goTo } from '../route.ts';
import { RecallForm } from './RecallForm.tsx';
import { RuleText } from './RuleText.tsx';

export function RecallsScreen() {
  const recalls = useOperation('recalls.list', {});
  const mayAdd = useHasRole('owner', 'dispatcher');
  const [isAdding, setIsAdding] = useState(false);
  return (
    <Screen
      title="Notices"
      action={mayAdd && !isAdding ? <Button onClick={() => setIsAdding(true)}>Take a notice down</Button> : undefined}
    >
      {isAdding ? (
        <Panel title="A new notice">
          <RecallForm recall={null} onDone={(recallId) => goTo('recall', { recallId })} />
        </Panel>
      ) : null}
      <Answer of={recalls}>
        {(rows) =>
          rows.length === 0 ? (
            <EmptyState title="No notice yet">
              A recall or safety notice of a maker or an authority is taken down here, by model, serial numbers and
              altitude. The appliances it is about are found by themselves.
            </EmptyState>
          ) : (
            <PlainTable
              caption="Notices"
              rows={rows}
              keyOf={({ recallId }) => recallId}
              columns={[
                {
                  label: 'Notice',
                  cell: ({ recallId, title, number }) => (
                    <RouteLink to="recall" params={{ recallId }}>
                      {number === null ? title : `${title} (${number})`}
                    </RouteLink>
                  ),
                },
                { label: 'About', cell: (recall) => <RuleText recall={recall} /> },
                { label: 'Issued', cell: ({ issuedOn }) => <DateText day={issuedOn} /> },
                { label: 'Meant', cell: ({ counts }) => counts.affected, isNumber: true },
                { label: 'Can’t tell', cell: ({ counts }) => counts.doubtful, isNumber: true },
                { label: 'Told', cell: ({ counts }) => counts.told, isNumber: true },
                { label: 'Open', cell: ({ counts }) => counts.open, isNumber: true },
                {
                  label: 'State',
                  cell: ({ closedOn }) =>
                    closedOn === null ? (
                      'open'
                    ) : (
                      <>
                        closed <DateText day={closedOn} />
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
