/** Lists that were looked at but not taken in: whoever puts one right can see again what was wrong. */
import { Button } from '@mantine/core';
import { InstantText } from '../kit/DateText.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { useOperation } from '../operations/useOperation.ts';

export function WaitingLists({ onLook }: { readonly onLook: (attachmentId: string) => void }) {
  const found = useOperation('imports.listWaiting', {});
  if (found.state !== 'ready' || found.value.length === 0) return null;
  return (
    <PlainTable
      caption="Looked at, not taken in"
      rows={found.value}
      keyOf={({ attachmentId }) => attachmentId}
      columns={[
        { label: 'Looked at, not taken in', cell: ({ fileName }) => fileName },
        { label: 'Brought', cell: ({ addedAt }) => <InstantText at={addedAt} /> },
        { label: 'By', cell: ({ addedByName }) => addedByName },
        {
          label: 'What is wrong',
          cell: ({ attachmentId, fileName }) => (
            <Button variant="default" size="xs" onClick={() => onLook(attachmentId)}>
              Look at {fileName} again
            </Button>
          ),
        },
      ]}
    />
  );
}
