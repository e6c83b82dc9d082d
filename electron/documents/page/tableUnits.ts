/** A table as units of one row each; numbers stand right or on their decimal mark, and a row longer than a page is continued. */
import { COLOURS } from '../documentColours.ts';
import { drawableText } from '../drawableText.ts';
import { textWidth, wrapText } from '../textMeasure.ts';
import type { Cell, Column, TableBlock } from './blocks.ts';
import type { Area } from './blockUnits.ts';
import type { Nodes, Put, Unit } from './layoutPages.ts';
import { HEAD, SMALL, TABLE, type TextStyle, textLine, toneColour, toneFont } from './textStyle.ts';
import { verdictShape } from './verdictShape.ts';

const GAP = 9;
const ROW_PADDING = 2.4;
const SHAPE = 7;
const SHAPE_INDENT = 11;

type PlacedColumn = Column & { readonly x: number; readonly space: number; readonly fractionWidth: number };
type CellLine = { readonly text: string; readonly style: TextStyle; readonly isFirst: boolean };

export function tableUnits(table: TableBlock, area: Area, nodes: Nodes, section: number): readonly Unit[] {
  const columns = placeColumns(table, area);
  const tableNode = nodes.add({ role: 'Table', parent: section });
  const head = headUnit(columns, area, nodes, tableNode);
  const rows = table.rows.flatMap((row) => rowUnits(row, table, columns, area, nodes, tableNode, head));
  return [head, ...rows];
}

function placeColumns(table: TableBlock, area: Area): readonly PlacedColumn[] {
  const fixed = table.columns.reduce((sum, column) => sum + (column.width ?? 0), 0);
  const shares = table.columns.reduce((sum, column) => sum + (column.width === undefined ? (column.share ?? 1) : 0), 0);
  const left = area.width - fixed - GAP * (table.columns.length - 1);
  let x = area.x;
  return table.columns.map((column, index) => {
    const space = column.width ?? (left * (column.share ?? 1)) / shares;
    const placed = { ...column, x, space, fractionWidth: widestFraction(table, index) };
    x += space + GAP;
    return placed;
  });
}

function widestFraction(table: TableBlock, index: number): number {
  return Math.max(
    0,
    ...table.rows.map((row) => {
      const cell = row[index];
      return cell ? numberWidths(drawableText(cell.text), cellStyle(cell)).fraction : 0;
    }),
  );
}

function headUnit(columns: readonly PlacedColumn[], area: Area, nodes: Nodes, tableNode: number): Unit {
  const row = nodes.add({ role: 'TR', parent: tableNode });
  const cells = columns.map((column) => ({
    column,
    node: nodes.add({ role: 'TH', parent: row, scope: 'Column' }),
    lines: wrapText(drawableText(column.header), HEAD.font, HEAD.size, column.space),
  }));
  const lineCount = Math.max(1, ...cells.map((cell) => cell.lines.length));
  const height = lineCount * HEAD.leading + 4;
  return {
    gapBefore: 9,
    height,
    keepsNext: true,
    place: (y, put) => {
      for (const { column, node, lines } of cells) {
        // Heads of several lines stand on the rule.
        const top = y + (lineCount - lines.length) * HEAD.leading;
        for (const [index, line] of lines.entries()) {
          const x = isNumeric(column) ? column.x + column.space - textWidth(line, HEAD.font, HEAD.size) : column.x;
          put(textLine(line, x, top + index * HEAD.leading, HEAD), node);
        }
      }
      const ruleY = y + height - 1;
      put(rule(area, ruleY, 0.8, COLOURS.green), null);
    },
  };
}

function rowUnits(
  row: readonly Cell[],
  table: TableBlock,
  columns: readonly PlacedColumn[],
  area: Area,
  nodes: Nodes,
  tableNode: number,
  head: Unit,
): readonly Unit[] {
  const rowNode = nodes.add({ role: 'TR', parent: tableNode });
  const cells = columns.map((column, index) => {
    const cell = row[index] ?? { text: '' };
    const isHead = table.hasRowHeaders === true && index === 0;
    const node = nodes.add(isHead ? { role: 'TH', parent: rowNode, scope: 'Row' } : { role: 'TD', parent: rowNode });
    return { column, cell, node, lines: cellLines(cell, column) };
  });
  const lineCount = Math.max(1, ...cells.map((cell) => cell.lines.length));
  const perUnit = Math.max(1, Math.floor((area.tallest * 0.6) / TABLE.leading));
  const parts = Math.ceil(lineCount / perUnit);
  return Array.from({ length: parts }, (_, part) => {
    const shown = cells.map((cell) => ({ ...cell, lines: cell.lines.slice(part * perUnit, (part + 1) * perUnit) }));
    const textHeight = Math.max(TABLE.leading, ...shown.map(({ lines }) => heightOf(lines)));
    const height = textHeight + 2 * ROW_PADDING;
    return {
      gapBefore: 0,
      height,
      keepsNext: false,
      head,
      place: (y, put) => {
        for (const { column, cell, node, lines } of shown) placeCell(cell, column, lines, node, y + ROW_PADDING, put);
        if (part === parts - 1) put(rule(area, y + height, 0.4, COLOURS.hairline), null);
      },
    } satisfies Unit;
  });
}

function cellLines(cell: Cell, column: PlacedColumn): readonly CellLine[] {
  const space = column.space - (cell.verdict ? SHAPE_INDENT : 0);
  const style = cellStyle(cell);
  const text = drawableText(cell.text);
  const main = text === '' ? [] : wrapText(text, style.font, style.size, space);
  const small = cell.small ? wrapText(drawableText(cell.small), SMALL.font, SMALL.size, space) : [];
  return [
    ...main.map((line, index) => ({ text: line, style, isFirst: index === 0 })),
    ...small.map((line) => ({ text: line, style: SMALL, isFirst: false })),
  ];
}

function placeCell(
  cell: Cell,
  column: PlacedColumn,
  lines: readonly CellLine[],
  node: number,
  top: number,
  put: Put,
): void {
  let y = top;
  for (const line of lines) {
    if (line.isFirst && cell.verdict) {
      for (const op of verdictShape(cell.verdict, column.x, y + (line.style.leading - SHAPE) / 2, SHAPE)) put(op, null);
    }
    put(textLine(line.text, lineX(line, cell, column), y, line.style), node);
    y += line.style.leading;
  }
}

function lineX(line: CellLine, cell: Cell, column: PlacedColumn): number {
  const x = column.x + (cell.verdict ? SHAPE_INDENT : 0);
  if (!isNumeric(column)) return x;
  const end = column.x + column.space;
  if (column.align === 'decimal' && line.isFirst) {
    const { whole, fraction } = numberWidths(line.text, line.style);
    return end - Math.max(column.fractionWidth, fraction) - whole;
  }
  return end - textWidth(line.text, line.style.font, line.style.size);
}

/** Of words the whole text counts as the part before the mark, so that they end where whole numbers end. */
function numberWidths(text: string, style: TextStyle): { readonly whole: number; readonly fraction: number } {
  const mark = /^[^a-z]*?\d[.,]\d+$/iu.test(text) ? text.search(/[.,]\d+$/u) : text.length;
  const whole = textWidth(text.slice(0, mark), style.font, style.size);
  return { whole, fraction: textWidth(text, style.font, style.size) - whole };
}

function cellStyle(cell: Cell): TextStyle {
  const tone = cell.tone ?? 'plain';
  return { ...TABLE, font: toneFont(tone), colour: toneColour(tone) };
}

function isNumeric(column: Column): boolean {
  return column.align === 'right' || column.align === 'decimal';
}

function heightOf(lines: readonly CellLine[]): number {
  return lines.reduce((sum, line) => sum + line.style.leading, 0);
}

function rule(area: Area, y: number, width: number, colour: (typeof COLOURS)[keyof typeof COLOURS]) {
  return { kind: 'line', from: [area.x, y], to: [area.x + area.width, y], width, colour } as const;
}
