/** One notice: whom it is about, who can’t be told, the letters, and what was done at each appliance. */
import { Button, Group } from '@mantine/core';
import { useState } from 'react';
import type { RecallRow } from '../../electron/contract/recalls.ts';
import { Answer } from '../kit/Answer.tsx';
import { ConfirmUndo } from '../kit/ConfirmUndo.tsx';
import { DateText } from '../kit/DateText.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Facts } from '../kit/Facts.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { Screen } from '../kit/Screen.tsx';
import { PreparePanel } from '../messages/PreparePanel.tsx';
import { useAppStatus, useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { AffectedPanel } from './AffectedPanel.tsx';
import { RecallForm } from './RecallForm.tsx';
import { RuleText } from './RuleText.tsx';

export function RecallScreen({ recallId }: { readonly recallId: string }) {
  const found = useOperation('recalls.get', { recallId });
  return (
    <Screen
      title={found.state === 'ready' ? found.value.recall.title : 'Notice'}
      crumbs={
        <RouteLink to="recalls" params={{}}>
          Notices
        </RouteLink>
      }
    >
      <Answer of={found}>
        {({ recall }) => (
          <>
            <NoticePanel recall={recall} />
            <AffectedPanel recallId={recallId} />
            {recall.closedOn === null ? (
              <PreparePanel
                title="Letters to prepare"
                about={{ kind: 'recall', recallId }}
                empty="Everybody it is about has been settled, or nobody is on file for them."
              />
            ) : null}
          </>
        )}
      </Answer>
    </Screen>
  );
}

function NoticePanel({ recall }: { readonly recall: RecallRow }) {
  const { today } = useAppStatus();
  const mayChange = useHasRole('owner', 'dispatcher');
  const close = useAct('recalls.close');
  const [isChanging, setIsChanging] = useState(false);
  const { recallId, closedOn, counts } = recall;
  return (
    <Panel
      title={recall.number === null ? 'The notice' : `The notice, ${recall.number}`}
      action={
        mayChange && !isChanging ? (
          <Button variant="default" onClick={() => setIsChanging(true)}>
            Change
          </Button>
        ) : undefined
      }
    >
      {isChanging ? (
        <RecallForm recall={recall} onDone={() => setIsChanging(false)} />
      ) : (
        <Facts
          facts={[
            ['Issued', <DateText key="issued" day={recall.issuedOn} />],
            ['By', recall.source],
            ['About', <RuleText key="rule" recall={recall} />],
            ['It asks for', recall.whatToDo],
            ['On file', `${counts.affected} meant, ${counts.doubtful} can’t be told; ${counts.told} told`],
          ]}
        />
      )}
      {counts.doubtful > 0 && closedOn === null ? (
        <Note tone="caution">
          Where the files can’t tell, somebody has to look: the letter says so. Put the serial or the altitude right and
          the list follows.
        </Note>
      ) : null}
      <ErrorText error={close.error} />
      {mayChange ? (
        <Group gap="sm" mt="sm">
          {closedOn === null ? (
            <ConfirmUndo
              label="Close the notice"
              confirmLabel="Close it"
              isBusy={close.isBusy}
              onConfirm={() => void close.act({ recallId, closedOn: today })}
            >
              {counts.open === 0
                ? 'Everything is settled. It can be opened again.'
                : `${counts.open} are not settled yet. No letters are made for them any more, and none of them may be fired before it is settled; it can be opened again.`}
            </ConfirmUndo>
          ) : (
            <>
              <span>
                Closed <DateText day={closedOn} />.
              </span>
              <Button
                variant="default"
                loading={close.isBusy}
                onClick={() => void close.act({ recallId, closedOn: null })}
              >
                Open it again
              </Button>
            </>
          )}
        </Group>
      ) : null}
    </Panel>
  );
}
