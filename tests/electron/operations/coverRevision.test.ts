/** A maker's later revision is for later boilers: it moved the cover of boilers started years before once. */
import { afterEach, beforeEach, expect, it } from 'vitest';
import { setUpCrew, setUpHouse } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { A_BASIS, anItem, aStep, tinySheetFile } from '../../support/tinySheet.ts';

let test: TestCore;
let applianceId: string;
afterEach(() => test.remove());

/** The same sheet with other terms: so many months for the exchanger, so many days to register. */
function issue(revision: string, months: number, days: number) {
  const cover = {
    terms: [{ part: 'exchanger', registeredMonths: months, unregisteredMonths: months, countedFrom: 'started' }],
    registration: { window: { days }, countedFrom: 'started', basis: A_BASIS },
    conditions: {
      serviceEveryMonths: 12,
      graceMonths: 0,
      serviceCountedFrom: 'anniversary',
      waterQualityRecorded: false,
      licensedInstaller: false,
      originalOwner: false,
      use: 'any',
      transferWindowDays: null,
    },
  };
  return tinySheetFile([aStep('arrive', [anItem('confirm', 'here', { blocks: [] })])], {
    revision,
    issuedOn: `${revision.slice(0, 7)}-01`,
    cover,
  });
}

const take = (sheet: object) => test.must('sheets.import', { fileName: 'a.json', text: JSON.stringify(sheet) });

beforeEach(async () => {
  test = openTestCore();
  await setUpCrew(test);
  await take(issue('2024-01', 60, 60));
  ({ applianceId } = await setUpHouse(test, { appliance: { sheetId: 'tiny' } }));
});

it('keeps every date of a boiler that was put in before it, and counts for one put in after', async () => {
  const started = (on: string) =>
    test.must('appliances.setDate', { applianceId, date: { kind: 'started', on, precision: 'day', source: 'plate' } });
  const installed = (on: string) =>
    test.must('appliances.setDate', {
      applianceId,
      date: { kind: 'installed', on, precision: 'day', source: 'plate' },
    });
  const told = async () => {
    const { cover, sheet } = await test.must('coverage.get', { applianceId });
    const { rows } = await test.must('deadlines.list', {});
    return [cover.terms[0]?.endsOn, rows[0]?.dueOn, sheet?.revision, sheet?.reason];
  };
  await installed('2025-03-01');
  await started('2025-03-05');
  const before = await told();
  expect(before).toEqual(['2030-03-05', '2025-05-04', '2024-01', 'in-force']);
  await take(issue('2026-02', 24, 30));
  expect(await told()).toEqual(before);
  await started('2026-02-28');
  await installed('2026-02-26');
  expect(await told()).toEqual(['2028-02-28', '2026-03-30', '2026-02', 'in-force']);
});
