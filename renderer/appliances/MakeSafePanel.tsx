/** Open make-safes of an appliance, before everything else about it: what is wrong, how it was isolated, who was told. */
import { Button, Checkbox, Group, Stack, TextInput } from '@mantine/core';
import { useState } from 'react';
import type { OutputOf } from '../../electron/contract/index.ts';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { TextField } from '../form/TextField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { Caution } from '../kit/Caution.tsx';
import { InstantText } from '../kit/DateText.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Facts } from '../kit/Facts.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { useAppStatus, useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { Thumbnail } from '../run/items/Thumbnail.tsx';

type MakeSafe = OutputOf<'appliances.get'>['makeSafes'][number];

export function OpenMakeSafe({ makeSafe }: { readonly makeSafe: MakeSafe }) {
  const mayClose = useHasRole('technician', 'owner');
  const [isDescribing, setIsDescribing] = useState(false);
  return (
    <Note tone="ember" title={`Make-safe open: ${makeSafe.what}`}>
      <Stack gap="sm" mt="xs">
        <MakeSafeFacts makeSafe={makeSafe} />
        <MakeSafePhotos makeSafe={makeSafe} />
        <p style={{ margin: 0 }}>Nothing may be lit here until a licensed person has closed it.</p>
        {isDescribing ? (
          <DescribeForm makeSafe={makeSafe} onDone={() => setIsDescribing(false)} />
        ) : (
          <Group gap="sm">
            <Button variant="default" onClick={() => setIsDescribing(true)}>
              {isDescribed(makeSafe) ? 'Change what was written down' : 'Write down what was done'}
            </Button>
          </Group>
        )}
        {mayClose ? <CloseForm makeSafeId={makeSafe.makeSafeId} /> : null}
      </Stack>
    </Note>
  );
}

function isDescribed({ isolatedHow, labelNumber, toldWhom }: MakeSafe): boolean {
  return isolatedHow !== null || labelNumber !== null || toldWhom !== null;
}

export function MakeSafeFacts({ makeSafe }: { readonly makeSafe: MakeSafe }) {
  return (
    <Facts
      facts={[
        ['Isolated', makeSafe.isolatedHow],
        ['Label', makeSafe.labelNumber],
        ['Told', makeSafe.toldWhom],
        ['Notice given', makeSafe.deliveredHow],
        ['Refused', makeSafe.isRefused ? 'the occupant would not have it isolated' : null],
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
                  {makeSafe.closedByName === null ? '' : `, ${makeSafe.closedByName}`}
                  {makeSafe.closedReason === null ? '' : `: ${makeSafe.closedReason}`}
                </span>,
              ],
            ] as const)),
      ]}
    />
  );
}

export function MakeSafePhotos({ makeSafe }: { readonly makeSafe: Pick<MakeSafe, 'what' | 'photoIds'> }) {
  if (makeSafe.photoIds.length === 0) return null;
  return (
    <Group gap="sm">
      {makeSafe.photoIds.map((attachmentId, index) => (
        <Thumbnail key={attachmentId} attachmentId={attachmentId} label={`${makeSafe.what}, photo ${index + 1}`} />
      ))}
    </Group>
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

function DescribeForm({ makeSafe, onDone }: { readonly makeSafe: MakeSafe; readonly onDone: () => void }) {
  const { makeSafeId } = makeSafe;
  const form = useDraftForm({
    draftKey: `make-safe.${makeSafeId}`,
    operation: 'makeSafes.describe',
    initial: {
      isolatedHow: makeSafe.isolatedHow ?? '',
      labelNumber: makeSafe.labelNumber ?? '',
      toldWhom: makeSafe.toldWhom ?? '',
      deliveredHow: makeSafe.deliveredHow ?? '',
      isRefused: makeSafe.isRefused,
    },
    toInput: (values, reader) => ({
      makeSafeId,
      isolatedHow: reader.optional(values.isolatedHow),
      labelNumber: reader.optional(values.labelNumber),
      toldWhom: reader.optional(values.toldWhom),
      deliveredHow: reader.optional(values.deliveredHow),
      isRefused: values.isRefused,
    }),
    onDone,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Save" failure={<ErrorText error={form.error} />} onLeave={onDone}>
      <div className="lo-fields">
        <TextField
          form={form}
          name="isolatedHow"
          label="How it was isolated"
          placeholder="gas cock closed, plugged …"
        />
        <TextField form={form} name="labelNumber" label="Number of the label" />
        <TextField form={form} name="toldWhom" label="Who was told" />
        <TextField form={form} name="deliveredHow" label="How the notice was given" placeholder="by hand, e-mail …" />
        <Checkbox
          size="md"
          label="They refused to have it isolated"
          checked={form.values.isRefused}
          onChange={(event) => form.set({ isRefused: event.currentTarget.checked })}
        />
      </div>
    </DraftFormFrame>
  );
}

/** From a phone call or a look at it: acting comes first, this record after. */
export function OpenMakeSafePanel({
  applianceId,
  onDone,
}: {
  readonly applianceId: string;
  readonly onDone: () => void;
}) {
  const { company } = useAppStatus();
  const emergencyNumber = company?.emergencyNumber ?? null;
  const form = useDraftForm({
    draftKey: `open-make-safe.${applianceId}`,
    operation: 'makeSafes.open',
    initial: { what: '' },
    toInput: (values) => ({ applianceId, visitId: null, what: values.what }),
    onDone,
  });
  return (
    <Panel title="Made safe, or has to be">
      <DraftFormFrame
        form={form}
        submitLabel="Open a make-safe"
        failure={<ErrorText error={form.error} />}
        onLeave={onDone}
      >
        <Caution>
          Gas smell or a CO alarm: everybody out first, touch no switch, call from outside
          {emergencyNumber === null ? '' : ` (${emergencyNumber})`}. Write it down afterwards.
        </Caution>
        <TextField form={form} name="what" label="What is wrong" isNeeded />
      </DraftFormFrame>
    </Panel>
  );
}
