/** Field cases F-06, F-07, F-08 and F-18 as a technician meets them in the running app. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { ModelSheet } from '../../domain/procedure/modelSheet.ts';
import { parseTyped } from '../../domain/quantity/parseTyped.ts';
import { unwrap } from '../../domain/result.ts';
import { buildApp } from '../../scripts/buildApp.ts';
import { isBuildNeeded } from '../../scripts/buildCheck.ts';
import { heading } from '../support/officeByKeys.ts';
import { APP_ROOT } from '../support/testCore.ts';
import { openWalkedCase, type WalkedCase } from '../support/walkedCase.ts';
import type { BookedRun } from '../support/wholeJob.ts';

const own = (...args: Parameters<typeof parseTyped>) => unwrap(parseTyped(...args)).valueOwn;
const MAKER = { kind: 'maker', source: 'altitude table' } as const;
const START = '2026-11-05T13:00:00.000Z';
const atMeter = (_office: unknown, run: BookedRun) => `#/run/${run.visitId}/${run.runId}/gas-pressures`;

/** General practice with one thing changed, as a maker's sheet that is asked the same way. */
function sheetWith(sheetId: string, change: Partial<ModelSheet>): ModelSheet {
  const file = join(APP_ROOT, 'assets/sheets/general-practice-natural-gas.json');
  const general: ModelSheet = JSON.parse(readFileSync(file, 'utf8'));
  return { ...general, ...change, sheetId, title: sheetId, maker: 'Invented maker', models: ['T 24'] };
}

let scene: WalkedCase | undefined;

beforeAll(async () => {
  if (isBuildNeeded(APP_ROOT)) await buildApp(APP_ROOT, 'warn');
});

afterEach(async () => {
  await scene?.close();
  scene = undefined;
});

/** Opens the line of a reading that is there already and types it anew. */
async function retype(one: WalkedCase, label: string, text: string): Promise<void> {
  await one.page
    .getByRole('button', { name: new RegExp(`^(?:.* )?${label}`) })
    .first()
    .focus();
  await one.hands.press('Enter');
  await one.page.locator('[data-card] input:focus').waitFor();
  await one.hands.type(text);
}

describe('F-06: two percent over on a cold day', { timeout: 120_000 }, () => {
  it('shows the spread of a 17 s timing and that it can’t be told apart from the rating', async () => {
    scene = await openWalkedCase({
      startAt: START,
      office: {
        sheet: sheetWith('no-derate', { altitude: { method: 'no-derate', basis: MAKER } }),
        ratedInputKw: own('ratedInputKw', '210000 Btu/h', 'kW'),
        compensation: 'temperature-pressure',
      },
      readings: {
        'meter-turns': { text: '1', unit: '' },
        'meter-seconds': { text: '17.5', unit: 's' },
        'heating-value': { text: '1010', unit: 'Btu/ft³' },
      },
      place: atMeter,
    });
    await retype(scene, 'Time for them', '17');
    await scene.hands.press('Enter');
    // The run has gone on to what is left; the finding stays with its step.
    await scene.page.getByText('Nothing stands in the way of leaving.').waitFor();
    await scene.page.getByRole('button', { name: /Gas pressures and meter/ }).focus();
    await scene.hands.press('Enter');
    const line = scene.page.getByLabel('Computed values', { exact: true }).getByRole('listitem').first();
    // 3600 / 17 × 1010 = 213,900 Btu/h = 62.7 kW; ± 1 s is 202,000 to 227,300 Btu/h, half of which is 3.7 kW.
    await expect.poll(async () => line.textContent(), { timeout: 15_000 }).toMatch(/62\.7 ± 3\.7/);
    const text = (await line.textContent()) ?? '';
    expect(text).toMatch(/can’t tell apart/);
    expect(text).toMatch(/Site rating 61\.5 kW \(no derate\): \+1\.8[56] % \(−3\.8\d to \+8\.2\d %\)/);
    await scene.page
      .getByText(/two turns or two minutes/)
      .first()
      .waitFor();
  });
});

describe('F-07: digits swapped between two lines', { timeout: 120_000 }, () => {
  it('asks about a rate worked out by hand whose digits are those of the computed one', async () => {
    const general = sheetWith('asks-for-the-rate', {});
    const startup = general.startup.map((step) =>
      step.key === 'gas-pressures'
        ? {
            ...step,
            items: step.items.flatMap((item) =>
              item.key === 'heating-value-source'
                ? [
                    item,
                    {
                      key: 'rate-by-hand',
                      label: 'Gas rate worked out by hand',
                      kind: 'read' as const,
                      quantity: 'typedGasRateM3PerH' as const,
                      point: null,
                      blocks: [],
                      mayBeNotPossible: true,
                      meets: [],
                    },
                  ]
                : [item],
            ),
          }
        : step,
    );
    scene = await openWalkedCase({
      startAt: START,
      office: { sheet: { ...general, startup }, ratedInputKw: 31 },
      readings: {
        'meter-turns': { text: '2', unit: '' },
        'meter-seconds': { text: '70', unit: 's' },
        'heating-value': { text: '1025', unit: 'Btu/ft³' },
        'rate-by-hand': { text: '102.9', unit: 'ft³/h' },
      },
      place: atMeter,
    });
    await retype(scene, 'Gas rate worked out by hand', '120.8');
    await scene.page
      .getByText(/digits swapped/i)
      .first()
      .waitFor();
    // What was typed stays what it is: the swap is offered, not made.
    expect(await scene.page.locator('[data-card="rate-by-hand"] input').first().inputValue()).toBe('120.8');
  });
});

describe('F-08: three derates for one site', { timeout: 120_000 }, () => {
  const site = {
    altitudeM: own('altitudeM', '9000', 'ft'),
    ratedInputKw: own('ratedInputKw', '100 MBH', 'kW'),
  };

  it('rates the site by the sheet’s own rule, which is printed beside it', async () => {
    scene = await openWalkedCase({
      startAt: START,
      office: {
        ...site,
        sheet: sheetWith('two-percent', {
          altitude: { method: 'per-1000-ft', pct: 2, fromFt: 0, countedFrom: 'sea-level', basis: MAKER },
        }),
      },
      // The thin air of 9,000 ft in the meter: 24 kW take so long.
      readings: { 'meter-seconds': { text: '65.5', unit: 's' } },
      place: atMeter,
    });
    // 82 MBH = 24.0 kW.
    await scene.page.getByText(/Site rating 24\.0 kW \(2 % per 1000 ft above 0 ft, counted from sea level\)/).waitFor();
  });

  it('does not judge against the plate where the sheet has no rule', async () => {
    scene = await openWalkedCase({ startAt: START, office: site, place: atMeter });
    await scene.page
      .getByText(/none is on the sheet; ask the maker/)
      .first()
      .waitFor();
    expect(await scene.page.getByText(/Site rating/).count()).toBe(0);
  });
});

describe('F-18: the card on the pile', { timeout: 120_000 }, () => {
  it('says eight days left, registers for the owner by itself and keeps a dated follow-up otherwise', async () => {
    scene = await openWalkedCase({
      startAt: START,
      office: { installedOn: '2026-10-14' },
      place: (office) => `#/registrations/${office.applianceId}`,
    });
    const { page, hands } = scene;
    await heading(hands, /^Registration: /);
    await page.getByText('8 days left').waitFor();
    await page.getByText(/Fri 13 Nov 2026/).waitFor();
    expect(await page.getByRole('radio', { name: 'We do, for the owner' }).isChecked()).toBe(true);
    await page.getByRole('radio', { name: 'We do, for the owner' }).focus();
    await hands.press('ArrowRight');
    expect(await page.getByRole('textbox', { name: /^Follow up on/ }).inputValue()).toBe('12 Nov 2026');
    await hands.press('Enter');
    const kept = async () =>
      scene?.must('registrations.get', { applianceId: scene.office.applianceId }).then(({ by, followUpOn }) => ({
        by,
        followUpOn,
      }));
    await expect.poll(kept, { timeout: 10_000 }).toEqual({ by: 'owner', followUpOn: '2026-11-12' });
  });
});
