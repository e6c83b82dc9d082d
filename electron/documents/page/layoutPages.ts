/** Turns blocks into pages. Headings stay with what follows, rows stay whole where they can, table heads come again on each page. */
import type { Block } from './blocks.ts';
import { blockUnits } from './blockUnits.ts';
import type { DrawOp, PageModel, PageNode, Paper, PlacedOp } from './pageModel.ts';

export type PageFrame = {
  readonly paper: Paper;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** What stands on every page besides the content: head, foot, the mark of a draft. */
  readonly chrome: (page: number, pageCount: number) => readonly DrawOp[];
};

/** The smallest part that is never torn apart. */
export type Unit = {
  readonly gapBefore: number;
  readonly height: number;
  /** Never the last on its page. */
  readonly keepsNext: boolean;
  /** Drawn again above this unit when it opens a page. */
  readonly head?: Unit;
  readonly breaksPage?: boolean;
  readonly place: (y: number, put: Put) => void;
};
export type Put = (op: DrawOp, node: number | null) => void;

/** Collects the document's structure while blocks are taken apart; a place on the page is filled in when it is known. */
export type Nodes = {
  readonly add: (node: PageNode) => number;
  readonly setBox: (index: number, box: readonly [number, number, number, number]) => void;
};

export function layoutPages(blocks: readonly Block[], frame: PageFrame): PageModel {
  const nodes: PageNode[] = [{ role: 'Document', parent: null }];
  const collected: Nodes = {
    add: (node) => nodes.push(node) - 1,
    setBox: (index, bbox) => {
      const node = nodes[index];
      if (node) nodes[index] = { ...node, bbox };
    },
  };
  const width = frame.paper.width - frame.left - frame.right;
  const tallest = frame.paper.height - frame.top - frame.bottom;
  const units = blockUnits(blocks, { x: frame.left, width, tallest }, collected);
  const pages = paginate(units, frame);
  return {
    width: frame.paper.width,
    height: frame.paper.height,
    nodes,
    pages: pages.map((body, index) => ({ body, chrome: frame.chrome(index + 1, pages.length) })),
  };
}

function paginate(units: readonly Unit[], frame: PageFrame): PlacedOp[][] {
  const floor = frame.paper.height - frame.bottom;
  let page: PlacedOp[] = [];
  const pages = [page];
  let y = frame.top;
  const put: Put = (op, node) => {
    page.push({ op, node });
  };
  for (const [index, unit] of units.entries()) {
    const isAtTop = page.length === 0;
    const mustBreak = unit.breaksPage === true || y + unit.gapBefore + heightKept(units, index) > floor;
    if (mustBreak && !isAtTop) {
      page = [];
      pages.push(page);
      y = frame.top;
      if (unit.head) {
        // Repeated heads are decoration: the structure has them once.
        unit.head.place(y, (op) => put(op, null));
        y += unit.head.height;
      }
    } else if (!isAtTop) {
      y += unit.gapBefore;
    }
    unit.place(y, put);
    y += unit.height;
  }
  return pages;
}

/** A unit together with those it must not be parted from, as far as they fit one page. */
function heightKept(units: readonly Unit[], index: number): number {
  let height = 0;
  for (let at = index; at < units.length; at += 1) {
    const unit = units[at];
    if (!unit) break;
    height += (at === index ? 0 : unit.gapBefore) + unit.height;
    if (!unit.keepsNext) break;
  }
  return height;
}
