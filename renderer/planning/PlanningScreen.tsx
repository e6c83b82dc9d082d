/** The planner: proposes who goes where and when, says why, and changes nothing until somebody accepts. */
import { Button, Group, NativeSelect, Stack } from '@mantine/core';
import { useState } from 'react';
import type { PlanMode } from '../../electron/contract/planning.ts';
import { DayInput } from '../form/DayField.tsx';
import { readDay } from '../form/FormReader.ts';
import { dayWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { Screen } from '../kit/Screen.tsx';
import { optionsOf } from '../kit/tradeWords.ts';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { addDays, weekOf } from '../visits/week.ts';
import { ProposalView } from './ProposalView.tsx';

const MODE_WORDS: Record<PlanMode, string> = {
  fill: 'Fill the gaps, move nothing',
  rebuild: 'Plan anew, only pins stay',
  repair: 'Repair with few moves',
};

const SECONDS_WORDS = { '5': '5 seconds', '10': '10 seconds', '30': '30 seconds', '60': 'a minute' } as const;

export function PlanningScreen() {
  const { today } = useAppStatus();
  const propose = useAct('planning.propose');
  const [proposalId, setProposalId] = useState<string | null>(null);
  const nextMonday = addDays(weekOf(today)[0] ?? today, 7);
  const [from, setFrom] = useState(dayWords(nextMonday));
  const [to, setTo] = useState(dayWords(addDays(nextMonday, 4)));
  const [mode, setMode] = useState<PlanMode>('fill');
  const [seconds, setSeconds] = useState('10');
  const [takesNotReady, setTakesNotReady] = useState('no');
  const first = readDay(from);
  const last = readDay(to);
  const start = async () => {
    if (!first.ok || first.day === null || !last.ok || last.day === null) return;
    const reply = await propose.act({
      from: first.day,
      to: last.day,
      mode,
      seconds: Number(seconds),
      takesNotReady: takesNotReady === 'yes',
    });
    if (reply.ok) setProposalId(reply.value.proposalId);
  };
  return (
    <Screen title="Plan the days">
      <Panel title="What to plan">
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void start();
          }}
        >
          <Stack gap="sm">
            <div className="lo-fields">
              <DayInput label="From" text={from} error={first.ok ? undefined : first.why} onText={setFrom} />
              <DayInput label="To" text={to} error={last.ok ? undefined : last.why} onText={setTo} />
              <NativeSelect
                label="How"
                value={mode}
                data={[...optionsOf(MODE_WORDS)]}
                onChange={(event) => setMode(event.currentTarget.value as PlanMode)}
              />
              <NativeSelect
                label="Time to search"
                value={seconds}
                data={[...optionsOf(SECONDS_WORDS)]}
                onChange={(event) => setSeconds(event.currentTarget.value)}
              />
              <NativeSelect
                label="Startups whose site is not ready"
                value={takesNotReady}
                data={[
                  { value: 'no', label: 'leave waiting' },
                  { value: 'yes', label: 'pencil in' },
                ]}
                onChange={(event) => setTakesNotReady(event.currentTarget.value)}
              />
            </div>
            <ErrorText error={propose.error} />
            <Group>
              <Button type="submit" loading={propose.isBusy}>
                Propose a plan
              </Button>
              <span className="lo-faint">Nothing is changed until you accept.</span>
            </Group>
          </Stack>
        </form>
      </Panel>
      {proposalId === null ? null : (
        <ProposalView key={proposalId} proposalId={proposalId} onGone={() => setProposalId(null)} />
      )}
    </Screen>
  );
}
