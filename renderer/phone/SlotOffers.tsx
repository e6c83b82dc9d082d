/** Up to ten times that fit into what is planned, best first: one press books and promises. */
import { Button } from '@mantine/core';
import { useEffect, useRef } from 'react';
import type { OfferedSlot } from '../../electron/contract/planning.ts';
import { obstacleWords } from '../board/conflictWords.ts';
import { Answer } from '../kit/Answer.tsx';
import { moveByArrows } from '../kit/arrowKeys.ts';
import { clockWords, dayWords } from '../kit/dayWords.ts';
import { Note } from '../kit/Note.tsx';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { leftOutWords } from '../planning/leftOutWords.ts';
import { addDays } from '../visits/week.ts';
import type { Offer } from './OfferPanel.tsx';

/** A caller seldom plans further ahead; a later day is typed. */
const DAYS_AHEAD = 13;

export function SlotOffers({
  jobId,
  isBusy,
  onTake,
}: {
  readonly jobId: string;
  readonly isBusy: boolean;
  readonly onTake: (offer: Offer, durationMin: number, name: string) => Promise<void>;
}) {
  const { today } = useAppStatus();
  const found = useOperation('planning.slots', { jobId, from: today, to: addDays(today, DAYS_AHEAD) });
  const list = useRef<HTMLUListElement>(null);
  const isThere = found.state === 'ready';
  // To the list and not to its first time: an Enter held too long would book it.
  useEffect(() => {
    if (isThere) list.current?.focus();
  }, [isThere]);
  return (
    <Answer of={found}>
      {({ slots, reasons, durationMin }) =>
        slots.length === 0 ? (
          <Note tone="caution" title="Nothing fits in the next two weeks">
            {reasons.map(leftOutWords).join('; ')}.
          </Note>
        ) : (
          <ul
            className="lo-offers"
            aria-label="Times that fit, best first"
            ref={list}
            tabIndex={-1}
            onKeyDown={moveByArrows}
          >
            {slots.map((slot) => (
              <li key={`${slot.staffId} ${slot.date} ${slot.fromMin}`}>
                <Button
                  variant="default"
                  fullWidth
                  justify="start"
                  loading={isBusy}
                  onClick={() => void onTake(offerOf(slot), durationMin, slot.name)}
                >
                  {dayWords(slot.date, { weekday: true })}, arrival {arrivalWords(slot)}, {slot.name}
                  {slot.isLate ? ', after the latest day' : ''}
                  {slot.toWeigh.map((obstacle) => `, ${obstacleWords(obstacle)}`).join('')}
                  {slot.extraTravelMin > 0 ? `, ${slot.extraTravelMin} min more travel` : ''}
                </Button>
              </li>
            ))}
          </ul>
        )
      }
    </Answer>
  );
}

function offerOf({ staffId, date, fromMin, toMin }: OfferedSlot): Offer {
  return { staffId, on: date, startMin: fromMin, toMin };
}

function arrivalWords({ fromMin, toMin }: OfferedSlot): string {
  return toMin > fromMin ? `${clockWords(fromMin)}–${clockWords(toMin)}` : clockWords(fromMin);
}
