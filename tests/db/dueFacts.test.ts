import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { readDueFacts } from '../../db/dues/readDueFacts.ts';
import { storePath } from '../../db/openStore.ts';
import { setUpOffice } from '../support/officeScenario.ts';
import { openTestCore } from '../support/testCore.ts';

it('answers in the order of the ids, whichever that is: the list of registrations is paged by it', async () => {
  const test = openTestCore();
  try {
    const { applianceId, siteId } = await setUpOffice(test);
    const second = await test.must('appliances.create', {
      siteId,
      appliance: {
        serial: 'TK204418',
        maker: 'Invented maker',
        model: 'T 24',
        sheetId: null,
        plateFuel: 'natural-gas',
        tagFuel: null,
        ratedInputKw: 25,
        ratedInputBasis: 'gross',
        ventKind: null,
        ventLengthM: null,
        ventElbows: null,
        isVentConcealed: null,
        note: null,
      },
      position: null,
      dates: [],
    });
    const raw = new Database(storePath(test.folder), { readonly: true });
    try {
      const ids = [second.applianceId, applianceId];
      for (const asked of [ids, ids.toReversed()])
        expect(readDueFacts(raw, asked, '2026-03-02T13:00:00.000Z').map((one) => one.applianceId)).toEqual(asked);
    } finally {
      raw.close();
    }
  } finally {
    test.remove();
  }
});
