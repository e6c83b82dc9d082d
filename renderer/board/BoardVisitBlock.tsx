/** One visit on the board: a button with everything in its name, a mark where something does not fit. */
import { stoppingNotices } from '../../domain/recalls/openNotices.ts';
import { isGrave } from '../../domain/schedule/dayConflicts.ts';
import { isOfPapers } from '../../domain/schedule/ofPapers.ts';
import { clockWords } from '../kit/dayWords.ts';
import { JOB_KIND_WORDS, VISIT_STATE_WORDS } from '../kit/tradeWords.ts';
import type { BoardBlock } from './boardModel.ts';
import { DoubtMark } from './DoubtMark.tsx';
import type { LabelPlace } from './labelPlaces.ts';
import type { BoardSpot } from './neighbour.ts';
import type { PointerCarry } from './usePointerCarry.ts';

/** A line of text stays to be seen of what lies under it. */
const DEPTH_PX = 22;
/** Narrower, and neither mouse nor eye finds it. */
const LEAST_PX = 28;
const LEAST_MARK_PX = 6;
const LANE_PX = 44;

export function BoardVisitBlock({
  block,
  staffId,
  left,
  width,
  label,
  dayLabel,
  isTabStop,
  isSelected,
  pointer,
  onActive,
  onSelect,
}: {
  readonly block: BoardBlock;
  readonly staffId: string;
  readonly left: number;
  /** As long as it takes. */
  readonly width: number;
  /** Where its words go when they do not fit into its time; a bar under them shows the time. */
  readonly label: LabelPlace | null;
  readonly dayLabel: string;
  readonly isTabStop: boolean;
  readonly isSelected: boolean;
  readonly pointer: PointerCarry;
  readonly onActive: (spot: BoardSpot) => void;
  readonly onSelect: (spot: BoardSpot) => void;
}) {
  const { visit } = block;
  const conflicts = block.conflicts.filter((one) => !isOfPapers(one));
  const safety = safetyWords(visit);
  const isGraveHere = safety.length > 0 || conflicts.some(isGrave);
  const tone = isGraveHere ? 'grave' : conflicts.length === 0 ? 'fits' : 'doubt';
  const time = block.isTimeOpen ? 'any time' : clockWords(block.startMin);
  const kinds = visit.jobs.map((job) => JOB_KIND_WORDS[job.kind]).join(' + ');
  const pins = [
    visit.isTechnicianPinned ? 'technician' : null,
    visit.isDayPinned ? 'day' : null,
    visit.isStartPinned ? 'start' : null,
  ].filter((pin) => pin !== null);
  // Begins with what is seen, so that speaking it chooses it.
  const said = [
    `${time} ${visit.customerName} ${kinds} · ${visit.city}`,
    block.isTimeOpen
      ? dayLabel
      : `${dayLabel}, until ${clockWords(Math.min(1439, block.startMin + visit.durationMin))}`,
    ...safety,
    visit.street,
    VISIT_STATE_WORDS[visit.state],
    ...(pins.length === 0 ? [] : [`pinned: ${pins.join(', ')}`]),
    ...(conflicts.length === 0
      ? []
      : [conflicts.length === 1 ? '1 thing does not fit' : `${conflicts.length} things do not fit`]),
  ].join('; ');
  return (
    <button
      type="button"
      className="lo-board-visit"
      data-visit={visit.visitId}
      data-staff={staffId}
      data-state={visit.state}
      data-tone={tone}
      data-selected={isSelected}
      data-open-time={block.isTimeOpen}
      data-labelled={label !== null}
      style={
        label === null
          ? {
              insetInlineStart: left,
              width: Math.max(LEAST_PX, width),
              insetBlockStart: 6 + Math.min(block.depth, 3) * DEPTH_PX,
            }
          : { insetInlineStart: label.left, width: label.width, insetBlockStart: 2 + label.lane * LANE_PX }
      }
      tabIndex={isTabStop ? 0 : -1}
      aria-label={said}
      aria-pressed={isSelected}
      title={said}
      onFocus={() => onActive({ staffId, visitId: visit.visitId })}
      onClick={({ detail }) => {
        // A key's click (detail 0) never ends a carry.
        if (detail === 0 || !pointer.hasJustCarried()) onSelect({ staffId, visitId: visit.visitId });
      }}
      onPointerDown={(event) => {
        if (!block.isMovable) return;
        pointer.begin(event, {
          what: { kind: 'visit', visitId: visit.visitId, fromStaffId: staffId },
          title: visit.customerName,
          durationMin: visit.durationMin,
          staffId,
          on: visit.plannedOn,
          startMin: block.startMin,
        });
      }}
    >
      <span className="lo-board-visit-time">
        {time}
        {label === null || tone === 'fits' ? null : <DoubtMark />}
        {pins.length === 0 ? null : (
          <svg width="12" height="14" viewBox="0 0 12 14" aria-hidden="true" focusable="false">
            <path d="M2 1h8L8.5 6 10 8H2l1.5-2ZM6 8v6" fill="currentColor" stroke="currentColor" />
          </svg>
        )}
      </span>{' '}
      <span className="lo-board-visit-name">{visit.customerName}</span>{' '}
      {label === null ? (
        <span className="lo-board-visit-what">
          {tone === 'fits' ? null : <DoubtMark />}
          {kinds} · {visit.city}
        </span>
      ) : (
        <span
          className="lo-board-bar"
          style={{ insetInlineStart: left - label.left, width: Math.max(LEAST_MARK_PX, width) }}
        />
      )}
    </button>
  );
}

/** What must not fire there, before anything else about it. */
function safetyWords({ jobs }: BoardBlock['visit']): readonly string[] {
  const makeSafes = jobs.reduce((sum, job) => sum + job.openMakeSafes, 0);
  const notices = jobs.reduce((sum, job) => sum + stoppingNotices(job.openNotices).length, 0);
  return [
    ...(makeSafes === 0 ? [] : ['a make-safe is open']),
    ...(notices === 0 ? [] : ['a recall or stop-use notice is not settled']),
  ];
}
