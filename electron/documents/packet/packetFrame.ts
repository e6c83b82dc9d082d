/** What stands on every page: whose packet it is, which page of how many, and the mark of a draft. */
import { regionOf } from '../../../domain/judgement/regions.ts';
import { COLOURS } from '../documentColours.ts';
import { drawableText } from '../drawableText.ts';
import type { PageFrame } from '../page/layoutPages.ts';
import { A4, type DrawOp, type Paper, US_LETTER } from '../page/pageModel.ts';
import { SMALL, type TextStyle, textLine } from '../page/textStyle.ts';
import { textWidth, wrapText } from '../textMeasure.ts';
import type { PacketView } from './packetView.ts';
import { KIND_WORDS } from './packetWords.ts';

/** Where office paper is US Letter rather than A4 (from memory of common use; Mexico, the Philippines and Chile print Letter). */
const LETTER_COUNTRIES = new Set(['US', 'CA', 'MX', 'PH', 'CL']);

const SIDE = 46;

export function packetPaper(view: PacketView): Paper {
  const { country, jurisdiction } = view.record.site;
  return regionOf(jurisdiction) === 'north-america' || LETTER_COUNTRIES.has(country) ? US_LETTER : A4;
}

export function packetFrame(view: PacketView): PageFrame {
  const paper = packetPaper(view);
  const right = paper.width - SIDE;
  const { appliance, company } = view.record;
  const label: TextStyle = { ...SMALL, colour: COLOURS.muted };
  const head = oneLine(
    `${KIND_WORDS[view.record.job.kind]} · ${appliance.maker} ${appliance.model} · ${appliance.serial}`,
    label,
    370,
  );
  const documentId = `Record ${view.sha256.slice(0, 16)}`;
  return {
    paper,
    left: SIDE,
    right: SIDE,
    top: 60,
    bottom: 54,
    chrome: (page, pageCount) => {
      const footTop = paper.height - 36;
      const ops: DrawOp[] = [];
      if (page > 1) {
        ops.push(textLine(head, SIDE, 28, label));
        ops.push(atRight(oneLine(company.name, label, 140), right, 28, label));
        ops.push({ kind: 'line', from: [SIDE, 42], to: [right, 42], width: 0.4, colour: COLOURS.hairline });
      }
      ops.push({
        kind: 'line',
        from: [SIDE, footTop - 5],
        to: [right, footTop - 5],
        width: 0.4,
        colour: COLOURS.hairline,
      });
      ops.push(textLine(documentId, SIDE, footTop, label));
      ops.push(atRight(`Page ${page} of ${pageCount}`, right, footTop, label));
      return view.isDraft ? [...ops, ...draftMark(paper)] : ops;
    },
  };
}

/** In words, framed, at the head and foot of the page: a copy cut in two still says it. */
function draftMark(paper: Paper): readonly DrawOp[] {
  const text = 'DRAFT – not for registration';
  const style: TextStyle = { font: 'semibold', size: 9, leading: 12, colour: COLOURS.ink };
  const width = textWidth(text, style.font, style.size);
  const left = (paper.width - width) / 2;
  return [12, paper.height - 21].flatMap((top): DrawOp[] => [
    {
      kind: 'path',
      path: `M ${left - 8} ${top - 1} L ${left + width + 8} ${top - 1} L ${left + width + 8} ${top + 12} L ${left - 8} ${top + 12} Z`,
      fill: COLOURS.paper,
      stroke: COLOURS.ink,
      width: 0.8,
    },
    textLine(text, left, top - 0.5, style),
  ]);
}

function oneLine(text: string, style: TextStyle, width: number): string {
  const [first = '', ...more] = wrapText(drawableText(text), style.font, style.size, width);
  return more.length === 0 ? first : `${first} …`;
}

function atRight(text: string, right: number, top: number, style: TextStyle): DrawOp {
  return textLine(text, right - textWidth(text, style.font, style.size), top, style);
}
