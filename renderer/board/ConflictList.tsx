/** How many visits do not fit in the days shown, and where each one is. */
import { Button, Popover } from '@mantine/core';
import { useMemo, useState } from 'react';
import { isOfPapers } from '../../domain/schedule/ofPapers.ts';
import { capital } from '../kit/capital.ts';
import { dayWords } from '../kit/dayWords.ts';
import type { BoardData, BoardRowModel } from './boardModel.ts';
import { conflictWords } from './conflictWords.ts';
import type { BoardSpot } from './neighbour.ts';
import { everyVisitFitsWords, papersOf } from './ofPapers.ts';

export function ConflictList({
  rows,
  data,
  onGo,
}: {
  readonly rows: readonly BoardRowModel[];
  readonly data: BoardData;
  readonly onGo: (spot: BoardSpot) => void;
}) {
  const [isOpen, setIsOpen] = useState(false);
  const found = useMemo(
    () =>
      rows.flatMap(({ technician, days }) =>
        days.flatMap(({ on, blocks }) =>
          blocks.filter(({ conflicts }) => !conflicts.every(isOfPapers)).map((block) => ({ technician, on, block })),
        ),
      ),
    [rows],
  );
  const nameOf = (visitId: string) =>
    data.visits.find((visit) => visit.visitId === visitId)?.customerName ?? 'another visit';
  const fits = useMemo(() => everyVisitFitsWords(rows.map(papersOf)), [rows]);
  const isAllWell = fits === everyVisitFitsWords([]);
  if (found.length === 0)
    return <strong style={{ color: isAllWell ? 'var(--lo-fir)' : 'var(--lo-ochre)' }}>{fits}</strong>;
  return (
    <Popover opened={isOpen} onChange={setIsOpen} position="bottom-start" trapFocus width={460}>
      <Popover.Target>
        <Button variant="default" onClick={() => setIsOpen((before) => !before)}>
          {found.length === 1 ? '1 visit does not fit' : `${found.length} visits do not fit`}
        </Button>
      </Popover.Target>
      <Popover.Dropdown aria-label="Visits that do not fit" style={{ maxHeight: '60vh', overflow: 'auto' }}>
        <ul className="lo-board-conflicts">
          {found.map(({ technician, on, block }) => (
            <li key={`${technician.staffId}-${block.visit.visitId}`}>
              <Button
                variant="subtle"
                onClick={() => {
                  setIsOpen(false);
                  onGo({ staffId: technician.staffId, visitId: block.visit.visitId });
                }}
              >
                {block.visit.customerName}, {dayWords(on, { weekday: true })}, {technician.name}
              </Button>
              <div>{capital(block.conflicts.map((conflict) => conflictWords(conflict, nameOf)).join('; '))}.</div>
            </li>
          ))}
        </ul>
      </Popover.Dropdown>
    </Popover>
  );
}
