/** Where it stands and stood; moving it, taking it out of use, and what came in its place. */
import { Button, Group, Stack } from '@mantine/core';
import { useState } from 'react';
import type { OutputOf } from '../../electron/contract/index.ts';
import { Answer } from '../kit/Answer.tsx';
import { ConfirmUndo } from '../kit/ConfirmUndo.tsx';
import { DateText } from '../kit/DateText.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { MoveForm } from './MoveForm.tsx';
import { TakeOutForm } from './TakeOutForm.tsx';

type Places = OutputOf<'appliances.getPlaces'>;

export function PlacePanel({ applianceId, mayEdit }: { readonly applianceId: string; readonly mayEdit: boolean }) {
  const found = useOperation('appliances.getPlaces', { applianceId });
  const [open, setOpen] = useState<'move' | 'take-out' | null>(null);
  const isStanding = found.state === 'ready' && found.value.places[0]?.toOn === null;
  return (
    <Panel
      title="Where it stands"
      action={
        mayEdit && open === null && isStanding ? (
          <Group gap="sm">
            <Button variant="default" onClick={() => setOpen('move')}>
              Move it
            </Button>
            <Button variant="default" onClick={() => setOpen('take-out')}>
              Take it out of use
            </Button>
          </Group>
        ) : undefined
      }
    >
      <Answer of={found}>
        {(places) => (
          <Stack>
            {open === 'take-out' ? (
              <TakeOutForm applianceId={applianceId} neighbours={places.neighbours} onDone={() => setOpen(null)} />
            ) : null}
            {open === 'move' ? (
              <MoveForm
                applianceId={applianceId}
                siteId={places.places[0]?.siteId ?? null}
                onDone={() => setOpen(null)}
              />
            ) : null}
            <OutOfUse applianceId={applianceId} places={places} mayEdit={mayEdit} />
            <Chain places={places} />
            <PlainTable
              caption="Where it stood"
              rows={places.places}
              keyOf={({ placementId }) => placementId}
              columns={[
                {
                  label: 'Site',
                  cell: ({ siteId, street, city }) => (
                    <RouteLink to="site" params={{ siteId }}>
                      {street}, {city}
                    </RouteLink>
                  ),
                },
                { label: 'Place', cell: ({ position }) => position ?? '' },
                { label: 'From', cell: ({ fromOn }) => (fromOn === null ? '' : <DateText day={fromOn} />) },
                { label: 'To', cell: ({ toOn }) => (toOn === null ? 'still there' : <DateText day={toOn} />) },
                { label: 'Why', cell: ({ endReason }) => endReason ?? '' },
              ]}
            />
          </Stack>
        )}
      </Answer>
    </Panel>
  );
}

function OutOfUse({
  applianceId,
  places: { places },
  mayEdit,
}: {
  readonly applianceId: string;
  readonly places: Places;
  readonly mayEdit: boolean;
}) {
  const putBack = useAct('appliances.putBack');
  const last = places[0];
  if (last === undefined || last.toOn === null) return null;
  return (
    <Note
      tone="caution"
      title="Out of use"
      action={
        mayEdit ? (
          <ConfirmUndo
            label="Put it back"
            confirmLabel="Put it back"
            isBusy={putBack.isBusy}
            onConfirm={async () => {
              await putBack.act({ applianceId });
            }}
          >
            It stands at {last.street} again as if it had never been taken out, and falls due again.
          </ConfirmUndo>
        ) : undefined
      }
    >
      Since <DateText day={last.toOn} />
      {last.endReason === null ? '' : `: ${last.endReason}`}. It falls due for nothing; what was recorded of it stays.
      <ErrorText error={putBack.error} />
    </Note>
  );
}

function Chain({ places: { replaces, replacedBy } }: { readonly places: Places }) {
  const line = (words: string, { applianceId, serial, maker, model }: NonNullable<Places['replaces']>) => (
    <p style={{ margin: 0 }}>
      {words}{' '}
      <RouteLink to="appliance" params={{ applianceId }}>
        {maker} {model}, {serial}
      </RouteLink>
    </p>
  );
  return (
    <>
      {replaces === null ? null : line('It came in place of', replaces)}
      {replacedBy === null ? null : line('In its place came', replacedBy)}
    </>
  );
}
