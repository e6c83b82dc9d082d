/** Who changed what and when, field by field; folded away until somebody asks. */
import { Button } from '@mantine/core';
import { useState } from 'react';
import { useOperation } from '../operations/useOperation.ts';
import { Answer } from './Answer.tsx';
import { changedFieldWords, changeKindWords } from './changeWords.ts';
import { InstantText } from './DateText.tsx';
import { EmptyState } from './EmptyState.tsx';
import { Panel } from './Panel.tsx';
import { PlainTable } from './PlainTable.tsx';

export function HistoryPanel({ entity, entityId }: { readonly entity: string; readonly entityId: string }) {
  const [isShown, setIsShown] = useState(false);
  return (
    <Panel
      title="Changes"
      action={
        <Button variant="default" aria-expanded={isShown} onClick={() => setIsShown((before) => !before)}>
          {isShown ? 'Hide' : 'Show'}
        </Button>
      }
    >
      {isShown ? <History entity={entity} entityId={entityId} /> : null}
    </Panel>
  );
}

function History({ entity, entityId }: { readonly entity: string; readonly entityId: string }) {
  const history = useOperation('history.list', { entity, entityId });
  return (
    <Answer of={history}>
      {(changes) =>
        changes.length === 0 ? (
          <EmptyState title="No changes on file">Every change is noted here with who made it.</EmptyState>
        ) : (
          <PlainTable
            caption="Changes"
            rows={changes}
            keyOf={(change) => `${change.at} ${change.kind} ${JSON.stringify(change.fields)}`}
            columns={[
              { label: 'When', cell: ({ at }) => <InstantText at={at} /> },
              { label: 'Who', cell: ({ byName }) => byName ?? 'the program' },
              { label: 'What', cell: ({ kind }) => changeKindWords(kind) },
              { label: 'Fields', cell: ({ fields }) => changedFieldWords(fields) },
            ]}
          />
        )
      }
    </Answer>
  );
}
