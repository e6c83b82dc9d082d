/** The last batches of packets, with how far each is. New ones are chosen among the deadlines. */
import { Answer } from '../kit/Answer.tsx';
import { InstantText } from '../kit/DateText.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { kindWords, progressWords, restingWords } from './packetBatchWords.ts';

export function PacketBatchesScreen() {
  const batches = useOperation('packetBatches.list', {});
  return (
    <Screen
      title="Packets in bulk"
      crumbs={
        <RouteLink to="deadlines" params={{}}>
          Deadlines
        </RouteLink>
      }
    >
      <Answer of={batches}>
        {(rows) =>
          rows.length === 0 ? (
            <EmptyState title="Nothing built in bulk yet">
              Choose appliances among the deadlines and build their packets in one go.
            </EmptyState>
          ) : (
            <PlainTable
              caption="Packets in bulk"
              rows={rows}
              keyOf={({ batchId }) => batchId}
              columns={[
                {
                  label: 'What',
                  cell: (batch) => (
                    <RouteLink to="packet-batch" params={{ batchId: batch.batchId }}>
                      {kindWords(batch)}
                    </RouteLink>
                  ),
                },
                { label: 'Begun', cell: ({ startedAt }) => <InstantText at={startedAt} /> },
                { label: 'By', cell: ({ startedByName }) => startedByName },
                { label: 'How far', cell: progressWords },
                { label: 'State', cell: restingWords },
              ]}
            />
          )
        }
      </Answer>
    </Screen>
  );
}
