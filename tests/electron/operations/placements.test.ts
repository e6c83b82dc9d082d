import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Office, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { bookAndBegin } from '../../support/wholeJob.ts';

describe('where an appliance stands', () => {
  let test: TestCore;
  let office: Office;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test, { installedOn: '2025-03-01' });
  });
  afterEach(() => test.remove());

  const twinOf = async (serial: string) => {
    const { appliance } = await test.must('appliances.get', { applianceId: office.applianceId });
    return (
      await test.must('appliances.create', {
        siteId: office.siteId,
        appliance: { ...appliance, serial },
        position: null,
        dates: [{ kind: 'started', on: '2026-03-01', precision: 'day', source: 'card' }],
      })
    ).applianceId;
  };

  it('lets a boiler that was replaced fall due no more, keeps its history and says what came in its place', async () => {
    await test.must('appliances.setDate', {
      applianceId: office.applianceId,
      date: { kind: 'started', on: '2025-03-02', precision: 'day', source: 'card' },
    });
    const dues = async () => (await test.must('serviceDue.list', {})).rows;
    const newId = await twinOf('TK900001');
    expect((await dues()).map((row) => row.applianceId)).toContain(office.applianceId);
    await test.must('jobs.open', { applianceId: office.applianceId, kind: 'service', note: null });
    await test.must('appliances.takeOut', {
      applianceId: office.applianceId,
      on: '2026-02-27',
      why: 'exchanger gone',
      replacedById: newId,
    });
    expect((await dues()).map((row) => row.applianceId)).toEqual([newId]);
    expect(await test.must('jobs.list', {})).toEqual([]);
    expect(await test.ask('jobs.open', { applianceId: office.applianceId, kind: 'service', note: null })).toMatchObject(
      {
        error: { code: 'not-standing' },
      },
    );
    expect((await test.must('sites.get', { siteId: office.siteId })).appliances.map((row) => row.applianceId)).toEqual([
      newId,
    ]);
    const places = await test.must('appliances.getPlaces', { applianceId: office.applianceId });
    expect(places).toMatchObject({
      places: [{ siteId: office.siteId, toOn: '2026-02-27', endReason: 'exchanger gone' }],
      replacedBy: { applianceId: newId, serial: 'TK900001' },
    });
    expect((await test.must('appliances.getPlaces', { applianceId: newId })).replaces).toMatchObject({
      applianceId: office.applianceId,
    });
    const found = await test.must('appliances.list', { query: 'TK204417' });
    expect(found.rows.map((row) => row.applianceId)).toEqual([office.applianceId]);
    expect((await test.must('history.get', { applianceId: office.applianceId })).entries).not.toEqual([]);
    await test.must('appliances.putBack', { applianceId: office.applianceId });
    expect((await dues()).map((row) => row.applianceId).toSorted()).toEqual([office.applianceId, newId].toSorted());
    expect(await test.must('jobs.list', {})).toHaveLength(1);
    expect((await test.must('appliances.getPlaces', { applianceId: newId })).replaces).toBeNull();
  });

  it('leaves a boiler taken out of every notice', async () => {
    const { appliance } = await test.must('appliances.get', { applianceId: office.applianceId });
    const { recallId } = await test.must('recalls.save', {
      recallId: null,
      recall: {
        title: 'Gas valve',
        number: null,
        source: 'maker',
        maker: appliance.maker,
        models: [],
        serialRanges: [],
        altitudeMinM: null,
        altitudeMaxM: null,
        issuedOn: '2026-01-05',
        whatToDo: 'exchange it',
      },
    });
    const affected = async () => (await test.must('recalls.get', { recallId })).rows.length;
    expect(await affected()).toBe(1);
    await test.must('appliances.takeOut', {
      applianceId: office.applianceId,
      on: '2026-03-01',
      why: 'scrapped',
      replacedById: null,
    });
    expect(await affected()).toBe(0);
    expect((await test.must('appliances.get', { applianceId: office.applianceId })).notices).toEqual([]);
  });

  it('refuses a day to come, a replacement by itself, and a boiler with a visit ahead', async () => {
    const take = (on: string, replacedById: string | null = null) =>
      test.ask('appliances.takeOut', { applianceId: office.applianceId, on, why: 'scrapped', replacedById });
    expect(await take('2026-03-03')).toMatchObject({ error: { code: 'day-in-future' } });
    expect(await take('2026-03-01', office.applianceId)).toMatchObject({ error: { code: 'replaced-by-itself' } });
    await bookAndBegin(test, office);
    expect(await take('2026-03-01')).toMatchObject({ error: { code: 'visits-ahead' } });
  });

  it('moves a boiler, and keeps the record of its earlier visit where that was', async () => {
    const { visitId, runId } = await bookAndBegin(test, office);
    await test.must('visits.finish', {
      visitId,
      outcome: 'return-needed',
      reason: 'no water',
      labourMin: null,
    });
    const { site } = await test.must('sites.get', { siteId: office.siteId });
    const { siteId } = await test.must('sites.create', {
      customerId: office.customerId,
      site: { ...site, street: '9 Tern Lane', altitudeM: 900 },
    });
    const move = { applianceId: office.applianceId, position: 'attic', on: '2026-03-02', why: 'house sold' };
    expect(await test.ask('appliances.move', { ...move, siteId: office.siteId })).toMatchObject({
      error: { code: 'same-site' },
    });
    await test.must('appliances.move', { ...move, siteId });
    expect((await test.must('appliances.get', { applianceId: office.applianceId })).siteId).toBe(siteId);
    const places = await test.must('appliances.getPlaces', { applianceId: office.applianceId });
    expect(places.places).toMatchObject([
      { siteId, position: 'attic', fromOn: '2026-03-02', toOn: null },
      { siteId: office.siteId, toOn: '2026-03-02', endReason: 'house sold' },
    ]);
    const view = await test.must('visits.getRun', { visitId, runId });
    expect(view.record.site.altitudeM).toBe(site.altitudeM);
  });
});
