/** A trip that could not do its work: why, by a reason that can be counted, and whether it is charged. */
import { Button, Checkbox, Group, NativeSelect, Stack, Textarea } from '@mantine/core';
import { useState } from 'react';
import type { OutputOf } from '../../electron/contract/index.ts';
import type { VisitRow } from '../../electron/contract/visits.ts';
import { Answer } from '../kit/Answer.tsx';
import { InstantText } from '../kit/DateText.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Facts } from '../kit/Facts.tsx';
import { Panel } from '../kit/Panel.tsx';
import { keyOf, optionsOf, WASTED_TRIP_WORDS } from '../kit/tradeWords.ts';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';

export function mayBeWasted({ state, outcome }: VisitRow): boolean {
  return state === 'pencilled' || state === 'planned' || outcome === 'site-not-ready' || outcome === 'return-needed';
}

export function WastedTripPanel({ visit }: { readonly visit: VisitRow }) {
  const { today } = useAppStatus();
  const trip = useOperation('wastedTrips.get', { visitId: visit.visitId });
  const [isOpen, setIsOpen] = useState(false);
  // Nobody has driven to a visit of tomorrow yet.
  if (visit.plannedOn > today) return null;
  return (
    <Panel
      title="Wasted trip"
      action={
        isOpen ? undefined : (
          <Button variant="default" onClick={() => setIsOpen(true)}>
            {trip.state === 'ready' && trip.value !== null ? 'Change the reason' : 'It was a wasted trip …'}
          </Button>
        )
      }
    >
      <Answer of={trip}>
        {(given) =>
          isOpen ? (
            <TripForm visit={visit} given={given} onDone={() => setIsOpen(false)} />
          ) : given === null ? (
            <p className="lo-faint" style={{ margin: 0 }}>
              Nothing recorded. Reasons are counted by builder and fitter.
            </p>
          ) : (
            <Facts
              facts={[
                ['Why', WASTED_TRIP_WORDS[given.code]],
                ['Charged', given.isChargeable ? 'yes' : 'no'],
                ['Note', given.note ?? 'none'],
                [
                  'Recorded',
                  <span key="recorded">
                    {given.recordedByName}, <InstantText at={given.recordedAt} />
                  </span>,
                ],
              ]}
            />
          )
        }
      </Answer>
    </Panel>
  );
}

function TripForm({
  visit,
  given,
  onDone,
}: {
  readonly visit: VisitRow;
  readonly given: OutputOf<'wastedTrips.get'>;
  readonly onDone: () => void;
}) {
  const record = useAct('wastedTrips.record');
  const [code, setCode] = useState<string>(given?.code ?? '');
  const [isChargeable, setIsChargeable] = useState(given?.isChargeable ?? false);
  const [note, setNote] = useState(given?.note ?? '');
  const known = keyOf(WASTED_TRIP_WORDS, code);
  return (
    <form
      onSubmit={async (event) => {
        event.preventDefault();
        if (known === null) return;
        const reply = await record.act({
          visitId: visit.visitId,
          code: known,
          isChargeable,
          note: note.trim() === '' ? null : note,
        });
        if (reply.ok) onDone();
      }}
    >
      <Stack gap="sm" maw="44rem">
        {visit.outcome === null ? (
          <p style={{ margin: 0 }}>The visit ends as “site was not ready”; its jobs go back to “Jobs to book”.</p>
        ) : null}
        <NativeSelect
          label="Why"
          required
          value={code}
          data={[{ value: '', label: 'choose' }, ...optionsOf(WASTED_TRIP_WORDS)]}
          onChange={(event) => setCode(event.currentTarget.value)}
        />
        <Checkbox
          label="Charged, as agreed"
          checked={isChargeable}
          onChange={(event) => setIsChargeable(event.currentTarget.checked)}
        />
        <Textarea label="Note" rows={2} value={note} onChange={(event) => setNote(event.currentTarget.value)} />
        <ErrorText error={record.error} />
        <Group gap="sm">
          <Button type="submit" disabled={known === null} loading={record.isBusy}>
            Record it
          </Button>
          <Button variant="default" onClick={onDone}>
            Leave it
          </Button>
        </Group>
      </Stack>
    </form>
  );
}
