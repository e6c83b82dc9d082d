import { describe, expect, it } from 'vitest';
import { WATER_SIDE_AT_ZERO } from '../../../domain/judgement/proof/otherReasons.ts';
import type { Block, ModelSheet, SheetStep, StepItem } from '../../../domain/procedure/modelSheet.ts';
import { readShippedSheets } from '../../support/shippedSheets.ts';
import { DEMANDS_OF_PRACTICE } from './demandsOfPractice.ts';

const sheets = readShippedSheets();
const general = sheets.filter((sheet) => sheet.maker === null);
const named = (list: readonly ModelSheet[]) => list.map((sheet) => ({ sheet, name: sheet.sheetId }));

describe('demands of practice', () => {
  it('are the nineteen steps, the holds before lighting and leaving, the stops, and their details', () => {
    const count = (prefix: string) => [...DEMANDS_OF_PRACTICE.keys()].filter((id) => id.startsWith(prefix)).length;
    expect([count('2.0/'), count('3/before-lighting/'), count('3/before-leaving/'), count('3/stop/')]).toEqual([
      19, 11, 11, 11,
    ]);
    expect(DEMANDS_OF_PRACTICE.size).toBe(152);
  });

  it.each(named(general))('$name: nothing is absent', ({ sheet }) => {
    expect(absentees(sheet)).toEqual([]);
  });

  it('names what is absent', () => {
    const [sheet] = general;
    if (sheet === undefined) throw new Error('no general sheet');
    const startup = sheet.startup.filter((step) => step.key !== 'gas-pressures');
    expect(absentees({ ...sheet, startup, service: [] })).toContain(
      '2.8/clocking: Meter timed, heating value with its source',
    );
  });

  it.each(named(sheets))('$name: no item claims a demand that is not on the list', ({ sheet }) => {
    const claimed = allItems([...sheet.startup, ...sheet.service]).flatMap((item) => item.meets);
    expect(
      claimed.filter((id) => !DEMANDS_OF_PRACTICE.has(id) && ![...MAKERS_OWN, ...READ_BY_JUDGEMENT].includes(id)),
    ).toEqual([]);
  });

  it.each(named(sheets))('$name: every hold before lighting keeps the burner off, at a startup', ({ sheet }) => {
    const held = allItems(sheet.startup).filter((item) => item.meets.some((id) => id.startsWith('3/before-lighting/')));
    expect(held.filter((item) => !item.blocks.includes('firing')).map((item) => item.key)).toEqual([]);
    expect(holdsMet(held, '3/before-lighting/')).toHaveLength(11);
  });

  it.each(named(sheets))('$name: every hold before leaving keeps the visit open', ({ sheet }) => {
    const held = allItems(sheet.startup).filter((item) => item.meets.some((id) => id.startsWith('3/before-leaving/')));
    const stays = (item: StepItem) => keepsOpen(item, ['leaving', 'firing']);
    expect(held.filter((item) => !stays(item)).map((item) => item.key)).toEqual([]);
    expect(holdsMet(held, '3/before-leaving/')).toHaveLength(11);
  });

  it.each(named(sheets))('$name: no signature, plate fuel, serial or leak test may be left out', ({ sheet }) => {
    const items = allItems([...sheet.startup, ...sheet.service]);
    const never = items.filter(
      (item) =>
        item.kind === 'sign-off' ||
        (item.kind === 'choose' && item.identifies === 'plate-fuel') ||
        (item.kind === 'note' && item.identifies === 'serial') ||
        (item.kind === 'choose' && item.meets.includes('3/stop/gas-smell')),
    );
    expect(never.length).toBeGreaterThanOrEqual(10);
    expect(never.filter((item) => item.mayBeNotPossible).map((item) => item.key)).toEqual([]);
  });

  it.each(named(sheets))(
    '$name: a vessel is read beside the question whether its water side is at zero',
    ({ sheet }) => {
      for (const steps of [sheet.startup, sheet.service]) {
        const items = allItems(steps);
        const question = items.findIndex((item) => item.kind === 'confirm' && item.meets.includes(WATER_SIDE_AT_ZERO));
        const vessel = items.findIndex((item) => item.kind === 'read' && item.quantity === 'vesselPreChargeBarG');
        expect(question).toBeGreaterThanOrEqual(0);
        expect(vessel).toBe(question + 1);
      }
    },
  );

  it.each(named(sheets))('$name: burning steps stand behind the hold point, signing behind the other', ({ sheet }) => {
    for (const step of [...sheet.startup, ...sheet.service]) {
      const burns = step.items.some((item) => item.kind === 'series' || item.kind === 'tuning');
      if (burns) expect([step.key, step.needsClear, step.who]).toEqual([step.key, 'firing', 'licensed']);
      const closes = step.items.some((item) => item.kind === 'sign-off' && item.blocks.includes('leaving'));
      if (closes) expect([step.key, step.needsClear]).toEqual([step.key, 'leaving']);
    }
  });
});

/** Not a demand of practice by itself: it tells the judgement which item proves the vessel's reading. */
const READ_BY_JUDGEMENT = [WATER_SIDE_AT_ZERO];

/** Practice asks for high and low; a middle reading only makers with three firing points ask for. */
const MAKERS_OWN = ['2.7/mid'];

function absentees(sheet: ModelSheet): readonly string[] {
  const met = new Set(allItems([...sheet.startup, ...sheet.service]).flatMap((item) => item.meets));
  return [...DEMANDS_OF_PRACTICE].filter(([id]) => !met.has(id)).map(([id, words]) => `${id}: ${words}`);
}

function allItems(steps: readonly SheetStep[]): readonly StepItem[] {
  return steps.flatMap((step) => step.items);
}

function holdsMet(items: readonly StepItem[], prefix: string): readonly string[] {
  return [...new Set(items.flatMap((item) => item.meets).filter((id) => id.startsWith(prefix)))];
}

function keepsOpen(item: StepItem, blocks: readonly Block[]): boolean {
  return blocks.some((block) => item.blocks.includes(block));
}
