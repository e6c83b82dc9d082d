import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { packetPages } from '../../../electron/documents/packet/packetPdf.ts';
import type { Block, TableBlock } from '../../../electron/documents/page/blocks.ts';
import { layoutPages, type PageFrame } from '../../../electron/documents/page/layoutPages.ts';
import { A4, type PageModel, type TextOp } from '../../../electron/documents/page/pageModel.ts';
import { textWidth } from '../../../electron/documents/textMeasure.ts';
import { sampleDraft, samplePacket } from '../../support/packetSample.ts';

// Whole documents and chains on a machine that is busy with other tests.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const frame: PageFrame = { paper: A4, left: 50, right: 50, top: 60, bottom: 60, chrome: () => [] };

function bodyTexts(model: PageModel): readonly (readonly TextOp[])[] {
  return model.pages.map((page) => page.body.map(({ op }) => op).filter((op) => op.kind === 'text'));
}

function roleOf(model: PageModel, page: number, text: string): string | undefined {
  const placed = model.pages[page]?.body.find(({ op }) => op.kind === 'text' && op.text === text);
  return placed?.node == null ? undefined : model.nodes[placed.node]?.role;
}

function isInside(model: PageModel, margin: number): boolean {
  return model.pages.every((page) =>
    page.body.every(({ op }) => {
      if (op.kind !== 'text') return true;
      const right = op.x + textWidth(op.text, op.font, op.size);
      return (
        op.x >= margin && right <= model.width - margin + 0.5 && op.baseline <= model.height - 50 && op.baseline >= 50
      );
    }),
  );
}

const lines = (count: number): string => Array.from({ length: count }, (_, index) => `line ${index}`).join('\n');

describe('layoutPages', () => {
  it('never leaves a heading alone at the foot of a page', () => {
    for (let filler = 1; filler < 70; filler += 1) {
      const model = layoutPages(
        [
          { kind: 'paragraph', text: lines(filler) },
          { kind: 'heading', level: 2, text: 'Heading' },
          { kind: 'heading', level: 3, text: 'Below it' },
          { kind: 'table', columns: [{ header: 'Head' }], rows: [[{ text: 'first row' }], [{ text: 'second row' }]] },
        ],
        frame,
      );
      const pageOf = (text: string) => bodyTexts(model).findIndex((ops) => ops.some((op) => op.text === text));
      expect(new Set(['Heading', 'Below it', 'Head', 'first row'].map(pageOf)).size, `${filler} lines`).toBe(1);
    }
  });

  it('repeats a table’s head on each page, in the structure only once', () => {
    const rows = Array.from({ length: 120 }, (_, index) => [{ text: `row ${index}` }]);
    const model = layoutPages([{ kind: 'table', columns: [{ header: 'The head' }], rows }], frame);
    expect(model.pages.length).toBeGreaterThan(2);
    for (const ops of bodyTexts(model)) expect(ops[0]?.text).toBe('The head');
    expect(roleOf(model, 0, 'The head')).toBe('TH');
    expect(roleOf(model, 1, 'The head')).toBeUndefined();
    expect(model.nodes.filter((node) => node.role === 'TH')).toHaveLength(1);
  });

  it('continues a row that is longer than a page', () => {
    const long = lines(300);
    const model = layoutPages(
      [{ kind: 'table', columns: [{ header: 'A' }, { header: 'B' }], rows: [[{ text: long }, { text: 'short' }]] }],
      frame,
    );
    const texts = bodyTexts(model)
      .flat()
      .map((op) => op.text);
    expect(texts.filter((text) => text.startsWith('line '))).toHaveLength(300);
    expect(isInside(model, 50)).toBe(true);
  });

  it('sets numbers on their decimal mark, whatever their decimals', () => {
    const rows = ['1.5', '12.25', '100', '0.003'].map((text) => [{ text: 'x' }, { text }]);
    const table: TableBlock = {
      kind: 'table',
      columns: [{ header: 'n' }, { header: 'v', width: 60, align: 'decimal' }],
      rows,
    };
    const [ops = []] = bodyTexts(layoutPages([table], frame));
    const marks = ops
      .filter((op) => /^\d/u.test(op.text))
      .map((op) => op.x + textWidth(op.text.replace(/\..*$/u, ''), op.font, op.size));
    expect(marks).toHaveLength(4);
    for (const mark of marks) expect(Math.abs(mark - (marks[0] ?? 0))).toBeLessThan(0.01);
  });

  it('should lose no text and keep it on the paper, whatever the content', () => {
    const word = fc.stringMatching(/^[a-zA-ZÀ-ž0-9-]{1,40}$/u);
    const text = fc.array(word, { minLength: 1, maxLength: 30 }).map((words) => words.join(' '));
    const block = fc.oneof<fc.Arbitrary<Block>[]>(
      text.map((one) => ({ kind: 'paragraph', text: one })),
      text.map((one) => ({ kind: 'heading', level: 2, text: one })),
      fc.array(text, { minLength: 1, maxLength: 5 }).map((items) => ({ kind: 'list', items })),
      fc
        .array(text, { minLength: 1, maxLength: 5 })
        .map((all) => ({ kind: 'notice', title: 'Note', lines: all, tone: 'plain' })),
      fc.array(text, { minLength: 1, maxLength: 8 }).map((all) => ({
        kind: 'facts',
        facts: all.map((value) => ({ label: 'Label', value })),
      })),
      fc.array(text, { minLength: 1, maxLength: 20 }).map((all) => ({
        kind: 'table',
        columns: [{ header: 'A' }, { header: 'B', width: 40, align: 'right' }],
        rows: all.map((value) => [{ text: value }, { text: value.slice(0, 30) }]),
      })),
    );
    fc.assert(
      fc.property(fc.array(block, { maxLength: 12 }), (blocks) => {
        const model = layoutPages(blocks, frame);
        expect(isInside(model, 50)).toBe(true);
        const drawn = bodyTexts(model)
          .flat()
          .map((op) => op.text)
          .join('')
          .replace(/[\s–]/gu, '');
        for (const one of blocks) {
          if (one.kind === 'paragraph' || one.kind === 'heading') expect(drawn).toContain(one.text.replaceAll(' ', ''));
        }
      }),
      { numRuns: 40 },
    );
  });

  it('makes one empty page of nothing', () => {
    expect(layoutPages([], frame).pages).toHaveLength(1);
  });
});

describe('the packet’s pages', () => {
  it.each([
    ['final', samplePacket()],
    ['draft', sampleDraft()],
  ])('stay inside the margins, and no two lines of text lie on each other (%s)', (_which, input) => {
    const { model } = packetPages(input);
    expect(isInside(model, 46)).toBe(true);
    for (const ops of bodyTexts(model)) {
      const boxes = ops.map((op) => ({
        left: op.x,
        right: op.x + textWidth(op.text, op.font, op.size),
        top: op.baseline - op.size * 0.66,
        low: op.baseline + op.size * 0.05,
        text: op.text,
      }));
      for (const [index, one] of boxes.entries()) {
        for (const other of boxes.slice(index + 1)) {
          const isOver =
            one.left < other.right - 0.3 &&
            other.left < one.right - 0.3 &&
            one.top < other.low - 0.3 &&
            other.top < one.low - 0.3;
          expect(isOver, `"${one.text}" over "${other.text}"`).toBe(false);
        }
      }
    }
  });
});
