/** Visits of this job that were cancelled, each with the way back. */
import { Button } from '@mantine/core';
import { DateText } from '../kit/DateText.tsx';
import { clockWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';

export function CancelledVisits({ jobId }: { readonly jobId: string }) {
  const found = useOperation('visits.listCancelled', { jobId });
  const bringBack = useAct('visits.bringBack');
  const mayBringBack = useHasRole('dispatcher', 'owner');
  if (found.state !== 'ready' || found.value.length === 0) return null;
  return (
    <Panel title="Cancelled visits">
      <ErrorText error={bringBack.error} />
      <PlainTable
        caption="Cancelled visits of this job"
        rows={found.value}
        keyOf={({ visitId }) => visitId}
        columns={[
          {
            label: 'Was planned',
            cell: ({ visitId, plannedOn, startMin }) => (
              <RouteLink to="visit" params={{ visitId }}>
                <DateText day={plannedOn} weekday />
                {startMin === null ? '' : `, ${clockWords(startMin)}`}
              </RouteLink>
            ),
          },
          { label: 'Who', cell: ({ crew }) => crew.join(', ') },
          { label: 'Why cancelled', cell: ({ reason }) => reason ?? '' },
          ...(mayBringBack
            ? [
                {
                  label: 'Bring back',
                  cell: ({ visitId }: { readonly visitId: string }) => (
                    <Button
                      variant="default"
                      loading={bringBack.isBusy}
                      onClick={() => void bringBack.act({ visitId })}
                    >
                      Bring it back
                    </Button>
                  ),
                },
              ]
            : []),
        ]}
      />
    </Panel>
  );
}
