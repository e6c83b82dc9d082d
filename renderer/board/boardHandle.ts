/** What everything that draws or moves on the board has to know: its frame, its rows, its scale. */
import type { RefObject } from 'react';
import type { BoardRowModel } from './boardModel.ts';
import type { BoardScale } from './boardScale.ts';

export type BoardHandle = {
  readonly scroller: RefObject<HTMLDivElement | null>;
  readonly rows: readonly BoardRowModel[];
  readonly scale: BoardScale;
};
