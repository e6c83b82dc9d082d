/** Labelled facts in two columns, read down the left one first; a picture may stand beside them. */
import { drawableText } from '../drawableText.ts';
import { wrapText } from '../textMeasure.ts';
import type { Fact, FigureBlock } from './blocks.ts';
import type { Area } from './blockUnits.ts';
import type { Nodes, Put, Unit } from './layoutPages.ts';
import { BODY, HEAD, SMALL, type TextStyle, textLine } from './textStyle.ts';

const COLUMN_GAP = 20;
const FACT_GAP = 5;
const LABEL: TextStyle = { ...HEAD, font: 'regular' };
const SINGLE_COLUMN_BELOW = 300;

type FactLines = {
  readonly lines: readonly { readonly text: string; readonly style: TextStyle; readonly node: number }[];
  readonly height: number;
};

export function factsUnits(
  facts: readonly Fact[],
  beside: (FigureBlock & { readonly width: number }) | undefined,
  area: Area,
  nodes: Nodes,
  section: number,
): readonly Unit[] {
  if (facts.length === 0 && !beside) return [];
  const width = beside ? area.width - beside.width - COLUMN_GAP : area.width;
  const columnCount = width < SINGLE_COLUMN_BELOW ? 1 : 2;
  const columnWidth = (width - COLUMN_GAP * (columnCount - 1)) / columnCount;
  const perColumn = Math.ceil(facts.length / columnCount);
  const columns = Array.from({ length: columnCount }, (_, index) =>
    column(facts.slice(index * perColumn, (index + 1) * perColumn), columnWidth, nodes, section),
  );
  const figure = beside && {
    ...beside,
    node: nodes.add({ role: 'Figure', parent: section, alt: drawableText(beside.alt) }),
  };
  const height = Math.max(beside?.height ?? 0, ...columns.map(columnHeight));
  if (height > area.tallest * 0.8) return oneByOne(columns, area);
  return [
    {
      gapBefore: 6,
      height,
      keepsNext: false,
      place: (y, put) => {
        for (const [index, one] of columns.entries())
          placeColumn(one, area.x + index * (columnWidth + COLUMN_GAP), y, put);
        if (!figure) return;
        const x = area.x + area.width - figure.width;
        nodes.setBox(figure.node, [x, y, x + figure.width, y + figure.height]);
        for (const op of figure.draw(x, y, figure.width)) put(op, figure.node);
      },
    },
  ];
}

/** Too long for a page beside each other: below each other, fact by fact. */
function oneByOne(columns: readonly (readonly FactLines[])[], area: Area): readonly Unit[] {
  return columns.flat().flatMap(({ lines }) =>
    lines.map((line, index) => ({
      gapBefore: index === 0 ? FACT_GAP : 0,
      height: line.style.leading,
      keepsNext: index === 0 && lines.length > 1,
      place: (y, put) => put(textLine(line.text, area.x, y, line.style), line.node),
    })),
  ) satisfies Unit[];
}

function column(facts: readonly Fact[], width: number, nodes: Nodes, section: number): readonly FactLines[] {
  if (facts.length === 0) return [];
  const table = nodes.add({ role: 'Table', parent: section });
  return facts.map((fact) => {
    const row = nodes.add({ role: 'TR', parent: table });
    const label = nodes.add({ role: 'TH', parent: row, scope: 'Row' });
    const value = nodes.add({ role: 'TD', parent: row });
    const set = (text: string, style: TextStyle, node: number) =>
      wrapText(drawableText(text), style.font, style.size, width).map((line) => ({ text: line, style, node }));
    const lines = [
      ...set(fact.label, LABEL, label),
      ...set(fact.value, BODY, value),
      ...(fact.small ? set(fact.small, SMALL, value) : []),
    ];
    return { lines, height: lines.reduce((sum, line) => sum + line.style.leading, 0) };
  });
}

function columnHeight(facts: readonly FactLines[]): number {
  return facts.reduce((sum, fact, index) => sum + fact.height + (index === 0 ? 0 : FACT_GAP), 0);
}

function placeColumn(facts: readonly FactLines[], x: number, top: number, put: Put): void {
  let y = top;
  for (const fact of facts) {
    for (const line of fact.lines) {
      put(textLine(line.text, x, y, line.style), line.node);
      y += line.style.leading;
    }
    y += FACT_GAP;
  }
}
