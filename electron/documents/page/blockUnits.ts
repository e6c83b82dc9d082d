/** Takes blocks apart into the units that pages are filled with, and notes each one's place in the document's structure. */
import { assertNever } from '../../../domain/result.ts';
import { COLOURS } from '../documentColours.ts';
import { drawableText } from '../drawableText.ts';
import { wrapText } from '../textMeasure.ts';
import type { Block } from './blocks.ts';
import { factsUnits } from './factsUnits.ts';
import type { Nodes, Unit } from './layoutPages.ts';
import type { NodeRole } from './pageModel.ts';
import { photoUnits } from './photoUnits.ts';
import { tableUnits } from './tableUnits.ts';
import { BODY, type TextStyle, textLine, toneColour, toneFont } from './textStyle.ts';

export type Area = { readonly x: number; readonly width: number; readonly tallest: number };

const ROOT = 0;

export function blockUnits(blocks: readonly Block[], area: Area, nodes: Nodes): readonly Unit[] {
  let section = ROOT;
  const take = (block: Block): readonly Unit[] => {
    if (block.kind === 'together') return keptTogether(block.blocks.flatMap(take), area);
    if (block.kind === 'heading' && block.level === 2) section = nodes.add({ role: 'Sect', parent: ROOT });
    return unitsOf(block, area, nodes, section);
  };
  return blocks.flatMap(take);
}

/** None of them the last on its page but the last; what is taller than a page is left to break where it may. */
function keptTogether(units: readonly Unit[], { tallest }: Area): readonly Unit[] {
  const height = units.reduce((sum, unit, index) => sum + (index === 0 ? 0 : unit.gapBefore) + unit.height, 0);
  if (height > tallest) return units;
  return units.map((unit, index) => (index < units.length - 1 ? { ...unit, keepsNext: true } : unit));
}

function unitsOf(
  block: Exclude<Block, { kind: 'together' }>,
  area: Area,
  nodes: Nodes,
  section: number,
): readonly Unit[] {
  switch (block.kind) {
    case 'heading':
      return headingUnits(block, area, nodes, section);
    case 'paragraph':
      return textUnits(block.text, 'P', toneStyle(block.tone ?? 'plain'), area, nodes, section, block.keepsNext);
    case 'list':
      return listUnits(block.items, area, nodes, section);
    case 'notice':
      return noticeUnits(block, area, nodes, section);
    case 'facts':
      return factsUnits(block.facts, block.beside, area, nodes, section);
    case 'table':
      return tableUnits(block, area, nodes, section);
    case 'figure': {
      const node = nodes.add({ role: 'Figure', parent: section, alt: drawableText(block.alt) });
      return [
        {
          gapBefore: 6,
          height: block.height,
          keepsNext: false,
          place: (y, put) => {
            nodes.setBox(node, [area.x, y, area.x + area.width, y + block.height]);
            for (const op of block.draw(area.x, y, area.width)) put(op, node);
          },
        },
      ];
    }
    case 'photos':
      return photoUnits(block.photos, area, nodes, section);
    case 'page-break':
      return [{ gapBefore: 0, height: 0, keepsNext: true, breaksPage: true, place: () => {} }];
    default:
      return assertNever(block);
  }
}

const HEADINGS = {
  1: { role: 'H1', style: { font: 'semibold', size: 20, leading: 24, colour: COLOURS.ink }, gap: 12, after: 2 },
  2: { role: 'H2', style: { font: 'semibold', size: 12.5, leading: 16, colour: COLOURS.green }, gap: 18, after: 5 },
  3: { role: 'H3', style: { font: 'semibold', size: 9.5, leading: 12.5, colour: COLOURS.ink }, gap: 10, after: 2 },
} as const satisfies Record<1 | 2 | 3, { role: NodeRole; style: TextStyle; gap: number; after: number }>;

function headingUnits(
  block: Extract<Block, { kind: 'heading' }>,
  area: Area,
  nodes: Nodes,
  section: number,
): readonly Unit[] {
  const { role, style, gap, after } = HEADINGS[block.level];
  const node = nodes.add({ role, parent: section });
  const lines = wrapText(drawableText(block.text), style.font, style.size, area.width);
  return [
    {
      gapBefore: gap,
      height: lines.length * style.leading + after,
      keepsNext: true,
      place: (y, put) => {
        for (const [index, line] of lines.entries())
          put(textLine(line, area.x, y + index * style.leading, style), node);
        if (block.level !== 2) return;
        const ruleY = y + lines.length * style.leading + 1;
        put(
          { kind: 'line', from: [area.x, ruleY], to: [area.x + area.width, ruleY], width: 0.9, colour: COLOURS.green },
          null,
        );
      },
    },
  ];
}

function toneStyle(tone: Parameters<typeof toneFont>[0]): TextStyle {
  return { ...BODY, font: toneFont(tone), colour: toneColour(tone) };
}

/** One unit a line; the first two and the last two of a paragraph stay together. */
function textUnits(
  text: string,
  role: NodeRole,
  style: TextStyle,
  area: Area,
  nodes: Nodes,
  parent: number,
  keepsNext = false,
): readonly Unit[] {
  const node = nodes.add({ role, parent });
  const lines = wrapText(drawableText(text), style.font, style.size, area.width);
  return lines.map((line, index) => ({
    gapBefore: index === 0 ? 5 : 0,
    height: style.leading,
    keepsNext:
      (lines.length > 1 && (index === 0 || index === lines.length - 2)) || (keepsNext && index === lines.length - 1),
    place: (y, put) => put(textLine(line, area.x, y, style), node),
  }));
}

function listUnits(items: readonly string[], area: Area, nodes: Nodes, section: number): readonly Unit[] {
  const list = nodes.add({ role: 'L', parent: section });
  const indent = 11;
  return items.flatMap((item) => {
    const entry = nodes.add({ role: 'LI', parent: list });
    const inner = { ...area, x: area.x + indent, width: area.width - indent };
    const units = textUnits(item, 'LBody', BODY, inner, nodes, entry);
    return units.map((unit, index) => ({
      ...unit,
      gapBefore: index === 0 ? 2 : 0,
      place: (y, put) => {
        if (index === 0) put(textLine('–', area.x + 1, y, { ...BODY, colour: COLOURS.muted }), null);
        unit.place(y, put);
      },
    })) satisfies Unit[];
  });
}

function noticeUnits(
  block: Extract<Block, { kind: 'notice' }>,
  area: Area,
  nodes: Nodes,
  section: number,
): readonly Unit[] {
  const padding = 8;
  const inner = area.width - 2 * padding - 4;
  const x = area.x + padding + 4;
  const colour = block.tone === 'stop' ? COLOURS.ember : COLOURS.green;
  const titleStyle: TextStyle = {
    ...BODY,
    font: 'semibold',
    size: 10,
    leading: 13,
    colour: block.tone === 'stop' ? COLOURS.ember : COLOURS.ink,
  };
  const titleNode = nodes.add({ role: 'P', parent: section });
  const titleLines = wrapText(drawableText(block.title), titleStyle.font, titleStyle.size, inner);
  const parts = block.lines.map((line) => ({
    node: nodes.add({ role: 'P', parent: section }),
    lines: wrapText(drawableText(line), BODY.font, BODY.size, inner),
  }));
  const flat = [
    ...titleLines.map((text) => ({ text, style: titleStyle, node: titleNode })),
    ...parts.flatMap(({ node, lines }) => lines.map((text) => ({ text, style: BODY, node }))),
  ];
  // A box that would not fit one page is continued in the next one.
  const perBox = Math.max(1, Math.floor((area.tallest * 0.7 - 2 * padding) / titleStyle.leading));
  const boxes = Array.from({ length: Math.ceil(flat.length / perBox) }, (_, index) =>
    flat.slice(index * perBox, (index + 1) * perBox),
  );
  return boxes.map((lines) => {
    const textHeight = lines.reduce((sum, line) => sum + line.style.leading, 0);
    const height = textHeight + 2 * padding;
    return {
      gapBefore: 8,
      height,
      keepsNext: false,
      place: (y, put) => {
        const [left, right, low] = [area.x, area.x + area.width, y + height];
        put(
          {
            kind: 'path',
            path: `M ${left} ${y} L ${right} ${y} L ${right} ${low} L ${left} ${low} Z`,
            fill: COLOURS.wash,
            stroke: null,
            width: 0,
          },
          null,
        );
        put({ kind: 'line', from: [left + 1.5, y], to: [left + 1.5, low], width: 3, colour }, null);
        let lineY = y + padding;
        for (const line of lines) {
          put(textLine(line.text, x, lineY, line.style), line.node);
          lineY += line.style.leading;
        }
      },
    } satisfies Unit;
  });
}
