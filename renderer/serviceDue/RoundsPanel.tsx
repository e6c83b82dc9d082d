/** Services of the coming months by area: each round with the day by which all of it has to be ridden. */
import { Button, Group } from '@mantine/core';
import { useState } from 'react';
import type { OutputOf } from '../../electron/contract/index.ts';
import { DateText } from '../kit/DateText.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { monthWords } from './dueWords.ts';

type Round = OutputOf<'serviceDue.get'>['rounds'][number];

/** The page stays short; the others come on demand. */
const AT_FIRST = 12;
const MORE = 24;

export function RoundsPanel({
  rounds,
  chosen,
  onChoose,
}: {
  readonly rounds: readonly Round[];
  /** `2026-10 B4T`; empty: none. */
  readonly chosen: string;
  readonly onChoose: (round: string) => void;
}) {
  const [shown, setShown] = useState(AT_FIRST);
  return (
    <Panel
      title="Rounds"
      action={
        chosen === '' ? undefined : (
          <Button variant="default" onClick={() => onChoose('')}>
            All services
          </Button>
        )
      }
    >
      {rounds.length === 0 ? (
        <EmptyState title="No round yet">
          Boilers due in the next months are grouped here by month and postcode, so that one trip does several.
        </EmptyState>
      ) : (
        <>
          <PlainTable
            caption="Rounds by month and area"
            rows={rounds.slice(0, shown)}
            keyOf={keyOfRound}
            columns={[
              {
                label: 'Round',
                cell: (round) => (
                  <Button
                    variant={chosen === keyOfRound(round) ? 'filled' : 'default'}
                    aria-pressed={chosen === keyOfRound(round)}
                    onClick={() => onChoose(keyOfRound(round))}
                  >
                    {monthWords(round.month)}, {round.area === '' ? 'area not known' : round.area}
                  </Button>
                ),
              },
              { label: 'Boilers', cell: ({ count }) => count, isNumber: true },
              { label: 'Booked', cell: ({ bookedCount }) => bookedCount, isNumber: true },
              {
                label: 'First latest day',
                cell: ({ byOn, pastLatestCount }) => (
                  <>
                    <DateText day={byOn} weekday />
                    {pastLatestCount === 0 ? null : (
                      <div style={{ color: 'var(--lo-ember)' }}>{pastLatestCount} past their latest day</div>
                    )}
                  </>
                ),
              },
            ]}
          />
          {rounds.length > shown ? (
            <Group gap="sm">
              <span className="lo-faint">{rounds.length - shown} more, smaller or later.</span>
              <Button variant="default" onClick={() => setShown(shown + MORE)}>
                Show {Math.min(MORE, rounds.length - shown)} more
              </Button>
            </Group>
          ) : null}
        </>
      )}
    </Panel>
  );
}

function keyOfRound({ month, area }: Round): string {
  return `${month} ${area}`;
}
