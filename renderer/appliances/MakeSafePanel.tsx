/** Open make-safes of an appliance, before everything else about it: what is wrong, how it was isolated, who was told. */
import { Button, Stack, TextInput } from '@mantine/core';
import { useState } from 'react';
import type { OutputOf } from '../../electron/contract/index.ts';
import { InstantText } from '../kit/DateText.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Facts } from '../kit/Facts.tsx';
import { Note } from '../kit/Note.tsx';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';

type MakeSafe = OutputOf<'appliances.get'>['makeSafes'][number];

export function OpenMakeSafe({ makeSafe }: { readonly makeSafe: MakeSafe }) {
  const mayClose = useHasRole('technician', 'owner');
  return (
    <Note tone="ember" title={`Make-safe open: ${makeSafe.what}`}>
      <Stack gap="sm" mt="xs">
        <MakeSafeFacts makeSafe={makeSafe} />
        <p style={{ margin: 0 }}>Nothing may be lit here until a licensed person has closed it.</p>
        {mayClose ? <CloseForm makeSafeId={makeSafe.makeSafeId} /> : null}
      </Stack>
    </Note>
  );
}

export function MakeSafeFacts({ makeSafe }: { readonly makeSafe: MakeSafe }) {
  return (
    <Facts
      facts={[
        ['Isolated', makeSafe.isolatedHow],
        ['Label', makeSafe.labelNumber],
        ['Told', makeSafe.toldWhom],
        [
          'Opened',
          <span key="opened">
            <InstantText at={makeSafe.openedAt} />, {makeSafe.openedByName}
          </span>,
        ],
        ...(makeSafe.closedAt === null
          ? []
          : ([
              [
                'Closed',
                <span key="closed">
                  <InstantText at={makeSafe.closedAt} />
                  {makeSafe.closedReason === null ? '' : `: ${makeSafe.closedReason}`}
                </span>,
              ],
            ] as const)),
      ]}
    />
  );
}

function CloseForm({ makeSafeId }: { readonly makeSafeId: string }) {
  const close = useAct('makeSafes.close');
  const [reason, setReason] = useState('');
  const [isAsking, setIsAsking] = useState(false);
  if (!isAsking) {
    return (
      <div>
        <Button variant="default" onClick={() => setIsAsking(true)}>
          Close it …
        </Button>
      </div>
    );
  }
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void close.act({ makeSafeId, reason });
      }}
    >
      <Stack gap="sm">
        <TextInput
          label="What was found and put right, and how it was proven"
          required
          autoComplete="off"
          value={reason}
          onChange={(event) => setReason(event.currentTarget.value)}
        />
        <ErrorText error={close.error} />
        <div style={{ display: 'flex', gap: '0.75rem' }}>
          <Button type="submit" loading={close.isBusy} disabled={reason.trim() === ''}>
            Close the make-safe
          </Button>
          <Button variant="default" onClick={() => setIsAsking(false)}>
            Leave it open
          </Button>
        </div>
      </Stack>
    </form>
  );
}
