/** One person's line on the board: working hours, what they are away for, the way between visits, and the visits. */
import { memo } from 'react';
import { clockWords, dayWords } from '../kit/dayWords.ts';
import { BoardVisitBlock } from './BoardVisitBlock.tsx';
import type { BoardDay, BoardRowModel } from './boardModel.ts';
import { type BoardScale, NAME_WIDTH, ROW_HEIGHT } from './boardScale.ts';
import { DoubtMark } from './DoubtMark.tsx';
import { placeLabels } from './labelPlaces.ts';
import type { BoardSpot } from './neighbour.ts';
import { elsewhereWords, lackingWords, papersOf } from './ofPapers.ts';
import type { PointerCarry } from './usePointerCarry.ts';

type Shared = {
  readonly scale: BoardScale;
  readonly activeVisitId: string | null;
  readonly selectedId: string | null;
  readonly pointer: PointerCarry;
  readonly onActive: (spot: BoardSpot) => void;
  readonly onSelect: (spot: BoardSpot) => void;
};

export const BoardRow = memo(function BoardRow({
  row,
  top,
  firstDay,
  lastDay,
  ...shared
}: Shared & {
  readonly row: BoardRowModel;
  readonly top: number;
  readonly firstDay: number;
  readonly lastDay: number;
}) {
  const { technician, days } = row;
  const count = days.reduce((sum, day) => sum + day.blocks.length, 0);
  const { lacking, elsewhere } = papersOf(row);
  const papers = [
    ...(lacking.length === 0 ? [] : [sameSaid(lackingWords(lacking, days[0]?.on))]),
    // In full it would not fit beside the name.
    ...(elsewhere === null ? [] : [{ shown: 'licence from elsewhere?', said: elsewhereWords(elsewhere) }]),
  ];
  return (
    <fieldset
      className="lo-board-row"
      style={{ height: ROW_HEIGHT, transform: `translateY(${top}px)` }}
      aria-label={`${technician.name}, ${count === 1 ? '1 visit' : `${count} visits`}${papers.map(({ said }) => `, ${said}`).join('')}`}
    >
      <div className="lo-board-name" style={{ width: NAME_WIDTH }} aria-hidden="true">
        <strong>{technician.name}</strong>
        <span className="lo-faint">{loadWords(days)}</span>
        {papers.map(({ shown, said }) => (
          <span key={shown} className="lo-board-papers" title={said}>
            <DoubtMark />
            {shown}
          </span>
        ))}
      </div>
      {days.map((day, index) =>
        index < firstDay || index > lastDay ? null : (
          <DayLane key={day.on} day={day} index={index} staffId={technician.staffId} {...shared} />
        ),
      )}
    </fieldset>
  );
});

/** Drawn again by itself: scrolling sideways brings days, it does not change those that are there. */
const DayLane = memo(function DayLane({
  day,
  index,
  staffId,
  scale,
  activeVisitId,
  selectedId,
  pointer,
  onActive,
  onSelect,
}: Shared & { readonly day: BoardDay; readonly index: number; readonly staffId: string }) {
  const dayLabel = dayWords(day.on, { weekday: true });
  const at = (minute: number) => (minute - scale.fromMin) * scale.pxPerMin;
  const grid = `${scale.gridMin * scale.pxPerMin}px 100%`;
  const labels = scale.isCompact
    ? placeLabels(
        day.blocks.map(({ startMin }) => at(startMin)),
        scale.dayWidth,
      )
    : null;
  return (
    <div
      className="lo-board-lane"
      style={{
        insetInlineStart: NAME_WIDTH + index * scale.dayWidth,
        width: scale.dayWidth,
        backgroundSize: grid,
      }}
    >
      {day.spans.map(({ fromMin, toMin }) => (
        <div
          key={fromMin}
          className="lo-board-span"
          style={{
            insetInlineStart: at(fromMin),
            width: (toMin - fromMin) * scale.pxPerMin,
            backgroundSize: grid,
            backgroundPositionX: -at(fromMin),
          }}
        />
      ))}
      {day.away === null || (scale.isCompact && day.blocks.length > 0) ? null : (
        <span className="lo-board-away">away: {day.away}</span>
      )}
      {day.legs.map((leg) =>
        leg.minutes === null || leg.minutes === 0 ? null : (
          <div
            key={`${leg.fromVisitId}-${leg.toVisitId}`}
            className="lo-board-leg"
            style={{ insetInlineStart: at(leg.leaveMin), width: leg.minutes * scale.pxPerMin }}
            title={`about ${leg.minutes} min on the way, from ${clockWords(Math.max(0, leg.leaveMin))}`}
          />
        ),
      )}
      {day.blocks.map((block, place) => (
        <BoardVisitBlock
          key={block.visit.visitId}
          block={block}
          staffId={staffId}
          left={at(block.startMin)}
          width={Math.min(block.visit.durationMin, 1440 - block.startMin) * scale.pxPerMin}
          label={labels?.[place] ?? null}
          dayLabel={dayLabel}
          isTabStop={activeVisitId === block.visit.visitId}
          isSelected={selectedId === block.visit.visitId}
          pointer={pointer}
          onActive={onActive}
          onSelect={onSelect}
        />
      ))}
    </div>
  );
});

function sameSaid(words: string): { readonly shown: string; readonly said: string } {
  return { shown: words, said: words };
}

/** Hours booked of hours worked in the days shown. */
function loadWords(days: readonly BoardDay[]): string {
  const booked = days.reduce(
    (sum, day) => sum + day.blocks.reduce((minutes, { visit }) => minutes + visit.durationMin, 0),
    0,
  );
  const hours = days.reduce(
    (sum, day) => sum + day.spans.reduce((minutes, span) => minutes + span.toMin - span.fromMin, 0),
    0,
  );
  const inHours = (minutes: number) => Math.round(minutes / 30) / 2;
  return hours === 0 ? 'no hours' : `${inHours(booked)} of ${inHours(hours)} h`;
}
