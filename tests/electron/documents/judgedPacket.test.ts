/** The packet of a run that the judgement itself has judged: its names, inputs and results must all read as words. */
import { describe, expect, it, vi } from 'vitest';
import { judgeRun } from '../../../domain/judgement/judgeRun.ts';
import { packetFiles } from '../../../electron/documents/packet/packetFiles.ts';
import type { PacketInput } from '../../../electron/documents/packet/packetInput.ts';
import { packetPages } from '../../../electron/documents/packet/packetPdf.ts';
import { verifyFile } from '../../../electron/documents/verify/verifyFile.ts';
import { computedValues } from '../../../electron/operations/computedValues.ts';
import { samplePacket } from '../../support/packetSample.ts';
import { sampleRun, sampleSheet } from '../../support/recordSample.ts';

// Whole documents and chains on a machine that is busy with other tests.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

function judgedInput(): PacketInput {
  const findings = judgeRun({ record: sampleRun(), sheet: sampleSheet() });
  return samplePacket({}, { findings, computed: computedValues(findings) });
}

describe('the packet of a judged run', () => {
  const input = judgedInput();
  const { model } = packetPages(input);
  const texts = model.pages.flatMap((page) => page.body.flatMap(({ op }) => (op.kind === 'text' ? [op.text] : [])));

  it('holds many findings and still no more than 20 pages', () => {
    expect(input.record.findings.length).toBeGreaterThan(80);
    expect(model.pages.length).toBeLessThanOrEqual(20);
  });

  it('shows no name that is meant for programs', () => {
    const codes = texts.filter((text) =>
      /\b(limit|computed|ceiling|relation|mistake|zero|emitter|pair|worse):[a-z]|@(high|mid|low)|reading-/u.test(text),
    );
    expect(codes).toEqual([]);
  });

  it('counts on its first page as many doubtful findings as it lists there', () => {
    const [counted = ''] = texts.filter((text) => /^\d+ (stop|within|outside)/u.test(text));
    const outside = Number(/(\d+) outside/u.exec(texts.slice(0, 60).join(' '))?.[1] ?? Number.NaN);
    expect(counted).not.toBe('');
    expect(texts.slice(0, texts.indexOf('Appliance and site')).filter((text) => text === 'Outside')).toHaveLength(
      outside,
    );
  });

  it('says nothing twice over, and no key, no point and no count as a program would', () => {
    const all = texts.map((text) => text.replaceAll('\u00a0', ' '));
    expect(all.filter((text) => /, (\w[\w ]*), \1\b/u.test(text))).toEqual([]);
    expect(all.filter((text) => /dynamic-all-on|after-purge|static-upstream/u.test(text))).toEqual([]);
    expect(all.join(' ')).toContain('Gas inlet pressure: (static, burner off) − (dynamic, every appliance on)');
    // What was worked out here is not what the analyser showed.
    const worked = all.slice(all.indexOf('Worked out from the readings'));
    expect(worked).toContain('CO/CO₂ ratio');
    // Of what went in, no more figures than an instrument gives.
    expect(all.filter((text) => /\d\.\d{4,} (%|bar|°C|K)/u.test(text))).toEqual([]);
  });

  it('holds the clocked input against the rating at this altitude', () => {
    const all = texts.join(' ').replaceAll('\u00a0', ' ');
    expect(all).toContain('Clocked input, gross');
    expect(all).not.toContain('not worked out');
  });

  it('lists what a service found apart from what it left, each under its step', () => {
    const { record, ...rest } = samplePacket();
    const left = record.run.readings.find(({ quantity, point }) => quantity === 'coPpm' && point === 'high');
    const step = record.sheet.steps.find(({ items }) => items.some(({ key }) => key === left?.itemKey));
    const item = step?.items.find(({ key }) => key === left?.itemKey);
    if (left === undefined || step === undefined || item === undefined) throw new Error('no CO at high fire');
    const found = { ...left, readingId: 'found', itemKey: 'high-as-found', valueOwn: '77', typedText: '77' };
    const asFound = { ...step, key: 'found', title: 'As found: high fire', items: [{ ...item, key: 'high-as-found' }] };
    const sheet = { ...record.sheet, steps: [asFound, ...record.sheet.steps] };
    const run = { ...record.run, readings: [found, ...record.run.readings] };
    const pages = packetPages({ ...rest, record: { ...record, sheet, run } }).model.pages;
    const words = pages.flatMap((page) => page.body.flatMap(({ op }) => (op.kind === 'text' ? [op.text] : [])));
    const samples = words.slice(words.indexOf('Samples'), words.indexOf('Readings'));
    expect(samples).toContain('As found: high fire');
    expect(samples).toContain(step.title);
    expect(samples).toContain('77');
  });

  it('makes files that verify', async () => {
    const files = await packetFiles(input);
    expect(verifyFile(files.packetZip)).toMatchObject({ isIntact: true, sha256: files.sha256 });
  });
});
