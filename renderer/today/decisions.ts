/** The board's answer as the domain wants it, to find what needs a decision now. */
import { type DecisionToMake, decisionsToMake } from '../../domain/schedule/decisions.ts';
import type { BoardTechnician, BoardVisit, UnplacedJob } from '../../electron/contract/board.ts';
import { type BoardData, outingsOf, toRows } from '../board/boardModel.ts';
import { type Papers, papersOf } from '../board/ofPapers.ts';

export type Decision = DecisionToMake<BoardVisit, UnplacedJob, BoardTechnician, NonNullable<Papers['elsewhere']>>;

/** `staffId`: only what concerns that person; null: everybody. */
export function findDecisions(
  data: BoardData,
  days: readonly string[],
  today: string,
  staffId: string | null,
): readonly Decision[] {
  const rows = toRows(data, days).filter(({ technician }) => staffId === null || technician.staffId === staffId);
  const blocks = rows.flatMap((row) => row.days.flatMap((day) => day.blocks));
  return decisionsToMake({
    today,
    visits: [...new Map(blocks.map((block) => [block.visit.visitId, block])).values()],
    waiting: data.unplaced,
    people: rows.map((row) => ({ person: row.technician, elsewhere: papersOf(row).elsewhere })),
    outings: outingsOf(data),
    plans: staffId === null,
  });
}
