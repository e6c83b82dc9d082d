/** A time for the caller: day, start and who may go, booked and promised in one step. */
import { Button, Group, NativeSelect, Stack, TextInput } from '@mantine/core';
import { useEffect, useRef, useState } from 'react';
import { isForbidding } from '../../domain/schedule/obstacles.ts';
import { PROMISED_WINDOW_MIN } from '../../domain/schedule/offerWindows.ts';
import { wallMinute } from '../../domain/schedule/wallClock.ts';
import { obstacleWords } from '../board/conflictWords.ts';
import { DayInput } from '../form/DayField.tsx';
import { readDay } from '../form/FormReader.ts';
import { durationWords, readDuration, readTime } from '../form/readTime.ts';
import { Answer } from '../kit/Answer.tsx';
import { clockWords, dayWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { LedTo } from '../kit/LedTo.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { SlotOffers } from './SlotOffers.tsx';

export type Offer = {
  readonly staffId: string;
  readonly on: string;
  readonly startMin: number;
  /** The last minute at which the arrival may be promised. */
  readonly toMin: number;
};

export function OfferPanel({ jobId }: { readonly jobId: string }) {
  const planning = useOperation('jobs.getPlanning', { jobId });
  const jobs = useOperation('jobs.list', { unplannedOnly: false, jobIds: [jobId] });
  const book = useAct('visits.book');
  const [booked, setBooked] = useState<{ readonly visitId: string; readonly words: string } | null>(null);
  const job = jobs.state === 'ready' ? jobs.value[0] : undefined;
  const isReady = (job?.openReadiness.length ?? 0) === 0;
  if (booked !== null) {
    return (
      <LedTo>
        <Note
          tone="fir"
          isSpoken
          action={
            <RouteLink to="visit" params={{ visitId: booked.visitId }}>
              Open the visit
            </RouteLink>
          }
        >
          {booked.words}
        </Note>
      </LedTo>
    );
  }
  const take = async (offer: Offer, durationMin: number, name: string) => {
    const reply = await book.act({
      jobIds: [jobId],
      plannedOn: offer.on,
      plannedFrom: clockWords(offer.startMin),
      plannedTo: clockWords(Math.min(1439, offer.toMin)),
      startMin: offer.startMin,
      durationMin,
      crew: [{ staffId: offer.staffId, role: 'licensed' }],
      isPencilled: !isReady,
      isPromised: true,
      note: null,
    });
    if (!reply.ok) return;
    setBooked({
      visitId: reply.value.visitId,
      words: `${isReady ? 'Booked' : 'Pencilled in until the site is ready'}: ${dayWords(offer.on, { weekday: true })}, arrival ${clockWords(offer.startMin)}–${clockWords(Math.min(1439, offer.toMin))}, ${name}.`,
    });
  };
  return (
    <Panel title="When?">
      <Stack gap="md">
        {isReady ? null : (
          <Note tone="caution">
            {job?.openReadiness.length === 1
              ? 'One readiness item is open'
              : `${job?.openReadiness.length} readiness items are open`}
            : the visit can be pencilled in, not confirmed.
          </Note>
        )}
        <SlotOffers jobId={jobId} isBusy={book.isBusy} onTake={take} />
        <h3>Another time</h3>
        <Answer of={planning}>
          {({ suggestedMin }) => (
            <ByHand jobId={jobId} suggestedMin={suggestedMin} isBusy={book.isBusy} onTake={take} />
          )}
        </Answer>
        <ErrorText error={book.error} />
      </Stack>
    </Panel>
  );
}

function ByHand({
  jobId,
  suggestedMin,
  isBusy,
  onTake,
}: {
  readonly jobId: string;
  readonly suggestedMin: number;
  readonly isBusy: boolean;
  readonly onTake: (offer: Offer, durationMin: number, name: string) => Promise<void>;
}) {
  const { today } = useAppStatus();
  const [day, setDay] = useState('');
  const [start, setStart] = useState('');
  const [length, setLength] = useState(durationWords(suggestedMin));
  const [who, setWho] = useState('');
  const read = readDay(day);
  const on = read.ok ? read.day : null;
  const time = readTime(start);
  const startMin = time === null || time === undefined ? null : wallMinute(time);
  const durationMin = readDuration(length);
  const people = useOperation('visits.whoMay', { jobIds: [jobId], on: on ?? today, startMin, durationMin });
  const able = people.state === 'ready' ? people.value.filter(({ obstacles }) => !obstacles.some(isForbidding)) : [];
  const chosen = able.find(({ staffId }) => staffId === who) ?? able[0];
  // Enter may come before it is known who may go: it counts as soon as that is there.
  const [isAsked, setIsAsked] = useState(false);
  const take = () => {
    if (on === null || startMin === null || durationMin === null || chosen === undefined) return;
    const offer = { staffId: chosen.staffId, on, startMin, toMin: startMin + PROMISED_WINDOW_MIN };
    void onTake(offer, durationMin, chosen.name);
  };
  const latestTake = useRef(take);
  useEffect(() => {
    latestTake.current = take;
  });
  const isKnown = people.state === 'ready';
  useEffect(() => {
    if (!isAsked || !isKnown) return;
    setIsAsked(false);
    latestTake.current();
  }, [isAsked, isKnown]);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        setIsAsked(true);
      }}
    >
      <Stack gap="sm">
        <Group gap="sm" align="start" grow>
          <DayInput label="Day" text={day} error={read.ok ? undefined : read.why} onText={setDay} />
          <TextInput
            label="Start"
            placeholder="9:30"
            autoComplete="off"
            value={start}
            error={time === undefined ? 'Not a time of day.' : undefined}
            onChange={(event) => setStart(event.currentTarget.value)}
          />
          <TextInput
            label="Time on site"
            autoComplete="off"
            value={length}
            error={durationMin === null ? 'Not a length of time.' : undefined}
            onChange={(event) => setLength(event.currentTarget.value)}
          />
          <NativeSelect
            label="Who goes"
            value={chosen?.staffId ?? ''}
            data={
              able.length === 0
                ? [{ value: '', label: 'nobody may' }]
                : able.map(({ staffId, name }) => ({ value: staffId, label: name }))
            }
            onChange={(event) => setWho(event.currentTarget.value)}
          />
        </Group>
        {chosen === undefined || chosen.obstacles.length === 0 || on === null ? null : (
          <Note tone="caution">
            {chosen.name}: {chosen.obstacles.map(obstacleWords).join('; ')}.
          </Note>
        )}
        <Group>
          <Button
            type="submit"
            loading={isBusy || isAsked}
            disabled={on === null || startMin === null || durationMin === null || (isKnown && chosen === undefined)}
          >
            Book and promise it
          </Button>
        </Group>
      </Stack>
    </form>
  );
}
