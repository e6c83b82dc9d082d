import { afterEach, beforeEach, expect, it } from 'vitest';
import { type Office, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';

let test: TestCore;
let office: Office;
beforeEach(async () => {
  test = openTestCore();
  office = await setUpOffice(test);
});
afterEach(() => test.remove());

it('says of a job whether it is charged, why not, and which invoice it is on', async () => {
  const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'repair', note: null });
  expect(await test.must('jobs.getCharge', { jobId })).toMatchObject({ isChargeable: true, reason: null });
  const free = { isChargeable: false, reason: null, outsideInvoiceNumber: null, outsideInvoiceOn: null };
  expect(await test.ask('jobs.setCharge', { jobId, charge: free })).toMatchObject({
    error: { code: 'reason-missing' },
  });
  expect(
    await test.ask('jobs.setCharge', {
      jobId,
      charge: { ...free, isChargeable: true, outsideInvoiceOn: '2026-03-01' },
    }),
  ).toMatchObject({ error: { code: 'invoice-number-missing' } });
  const charge = {
    isChargeable: false,
    reason: 'under warranty',
    outsideInvoiceNumber: 'R-7',
    outsideInvoiceOn: '2026-03-01',
  };
  await test.must('jobs.setCharge', { jobId, charge });
  expect(await test.must('jobs.getCharge', { jobId })).toEqual(charge);
});
