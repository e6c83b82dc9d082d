import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { PartyFields } from '../../../electron/contract/parties.ts';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { bookAndBegin, readStartupNotes, walkRun } from '../../support/wholeJob.ts';

const PERSON: PartyFields = {
  kind: 'person',
  name: 'Zephyrine Quillfeather',
  contactName: null,
  language: 'en',
  email: 'zephyrine@quillfeather.example',
  phoneTyped: '902 555 0177',
  street: '77 Ptarmigan Rise',
  postcode: 'B9Q 7Z7',
  city: 'Graven Bay',
  region: null,
  country: 'CA',
  note: 'keeps a brindled lurcher',
};
const SEEDED = [
  'Zephyrine',
  'Quillfeather',
  'quillfeather.example',
  '555 0177',
  '9025550177',
  'Ptarmigan',
  'B9Q 7Z7',
  'brindled lurcher',
  'Former Surname',
  'key under the urn',
  'phoned about her rota',
];

describe('a person and their data', () => {
  let test: TestCore;
  let office: Office;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    await test.must('customers.update', {
      customerId: office.customerId,
      party: { ...PERSON, name: 'Zephyrine Former Surname' },
      note: null,
    });
    await test.must('customers.update', { customerId: office.customerId, party: PERSON, note: 'pays late' });
    const { site } = await test.must('sites.get', { siteId: office.siteId });
    await test.must('sites.update', {
      siteId: office.siteId,
      site: { ...site, street: '77 Ptarmigan Rise', postcode: 'B9Q 7Z7', access: 'key under the urn' },
    });
  });
  afterEach(() => test.remove());

  const owner = () => test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
  const partyIdOf = async () => (await test.must('customers.get', { customerId: office.customerId })).party.partyId;

  /** Every file of the store and its attachments, not the copies. */
  const findSeeded = (folder = test.folder): readonly string[] =>
    readdirSync(folder, { recursive: true })
      .map((name) => join(folder, String(name)))
      .filter((path) => statSync(path).isFile() && !path.includes('/copies/'))
      .flatMap((path) => {
        const bytes = readFileSync(path).toString('latin1').toLowerCase();
        return SEEDED.filter((text) => bytes.includes(text.toLowerCase())).map((text) => `${text} in ${path}`);
      });

  it('erases name, address, numbers and words from every byte on disk, and the sealed chain still verifies', async () => {
    const partyId = await partyIdOf();
    const at = await bookAndBegin(test, office);
    await walkRun(test, office, at, readStartupNotes());
    await test.must('visits.finish', { visitId: at.visitId, outcome: 'finished', reason: null, labourMin: 90 });
    await test.must('visits.seal', { visitId: at.visitId, runId: at.runId });
    await owner();
    const { jobId } = await test.must('jobs.open', {
      applianceId: office.applianceId,
      kind: 'repair',
      note: 'Zephyrine Quillfeather phoned about her rota',
    });
    await test.must('claims.open', {
      applianceId: office.applianceId,
      claim: {
        partNumber: 'GV-1',
        partName: null,
        openedOn: '2026-03-02',
        sentOn: null,
        partReturnedOn: null,
        claimNumber: null,
        decidedOn: null,
        isWithdrawn: false,
        currency: null,
        partsMinorUnits: null,
        partsOutcome: null,
        partsGrantedMinorUnits: null,
        labourMinorUnits: null,
        labourOutcome: null,
        labourGrantedMinorUnits: null,
        refusedBecause: null,
        note: 'zephyrine quillfeather has the old valve',
      },
    });
    const exported = await test.must('persons.export', { partyId });
    // What is made of a photo to be shown small shows the same house.
    const [photo] = (await test.must('visits.getRun', { visitId: at.visitId, runId: at.runId })).record.photos;
    const attachmentId = photo?.attachmentId ?? '';
    const picture = Buffer.concat([Buffer.from([0xff, 0xd8, 0xff]), Buffer.from('Zephyrine')]);
    await test.must('photos.keepSmall', { attachmentId, jpegBase64: picture.toString('base64') });
    expect((await test.must('photos.findSmall', { attachmentId })).smallId).not.toBeNull();
    expect(findSeeded()).not.toEqual([]);
    const look = await test.must('persons.look', { partyId });
    expect(look.holds.map(({ what }) => what)).toContain('cover-may-run');
    expect(look.holds.map(({ what }) => what)).toContain('claim-open');
    expect(await test.ask('persons.erase', { partyId, typedName: 'Zephyrine', alsoCopies: false })).toMatchObject({
      error: { code: 'name-differs' },
    });

    const erased = await test.must('persons.erase', { partyId, typedName: PERSON.name, alsoCopies: true });
    expect(erased.copiesLeft).toBe(0);
    expect(erased.sweptRows).toBeGreaterThan(0);
    expect(findSeeded()).toEqual([]);
    expect(findSeeded(join(test.folder, 'copies'))).toEqual([]);
    const chain = await test.must('records.verify', { visitId: at.visitId });
    expect(chain).toMatchObject({ isIntact: true });
    expect(await test.core.getFile(exported.attachmentId, 'test-window')).toBeNull();
    expect(await test.must('photos.findSmall', { attachmentId })).toEqual({ smallId: null });
    expect((await test.must('customers.list', { query: 'quillfeather' })).rows).toEqual([]);
    expect(await test.must('jobs.getCharge', { jobId })).toMatchObject({ isChargeable: true });
    const { record } = await test.must('visits.getRun', { visitId: at.visitId, runId: at.runId });
    expect(record.readings.length).toBeGreaterThan(10);
    expect(await test.ask('persons.erase', { partyId, typedName: '(erased)', alsoCopies: false })).toMatchObject({
      error: { code: 'person-erased' },
    });
    test.restart();
    await owner();
    expect(findSeeded()).toEqual([]);
  });

  it('leaves a namesake and a neighbour what is theirs', async () => {
    const partyId = await partyIdOf();
    const other = await test.must('customers.create', {
      party: { ...PERSON, email: 'other@person.example', phoneTyped: '902 555 0123' },
      note: null,
      isKnownNew: true,
    });
    await test.must('persons.erase', { partyId, typedName: PERSON.name, alsoCopies: false });
    expect((await test.must('customers.get', { customerId: other.customerId })).party).toMatchObject({
      name: PERSON.name,
      street: PERSON.street,
    });
    expect((await test.must('customers.list', { query: 'quillfeather' })).rows).toHaveLength(1);
  });

  it('keeps the address where a tenant lives on', async () => {
    await test.must('sites.addRole', {
      siteId: office.siteId,
      party: { ...PERSON, name: 'Ossian Plover', email: null, phoneTyped: null },
      role: 'occupant',
      fromOn: null,
    });
    const partyId = await partyIdOf();
    expect(await test.must('persons.look', { partyId })).toMatchObject({ sharedSiteCount: 1 });
    await test.must('persons.erase', { partyId, typedName: PERSON.name, alsoCopies: false });
    expect((await test.must('sites.get', { siteId: office.siteId })).site.street).toBe('77 Ptarmigan Rise');
  });

  it('takes no code, key or answer along where somebody is called like one', async () => {
    const partyId = await partyIdOf();
    await test.must('customers.update', {
      customerId: office.customerId,
      party: { ...PERSON, name: 'CA', contactName: 'None', street: 'arrival', email: null, phoneTyped: 'serial' },
      note: null,
    });
    const at = await bookAndBegin(test, office);
    await walkRun(test, office, at, readStartupNotes());
    const readRun = async () => (await test.must('visits.getRun', { visitId: at.visitId, runId: at.runId })).record;
    const before = await readRun();
    await owner();
    await test.must('persons.erase', { partyId, typedName: 'CA', alsoCopies: false });
    expect((await readRun()).answers).toEqual(before.answers);
    expect((await readRun()).readings).toEqual(before.readings);
  });

  it('gives out what is on file about one person as JSON and CSV, to the owner alone', async () => {
    const partyId = await partyIdOf();
    const { attachmentId } = await test.must('persons.export', { partyId });
    const file = await test.core.getFile(attachmentId, 'test-window');
    const files = unzipSync(file?.bytes ?? expect.unreachable());
    const json = JSON.parse(strFromU8(files['person.json'] ?? expect.unreachable())) as {
      tables: Record<string, Record<string, unknown>[]>;
    };
    expect(json.tables['person']).toMatchObject([{ name: PERSON.name, email: PERSON.email }]);
    expect(json.tables['sites']).toMatchObject([{ street: '77 Ptarmigan Rise' }]);
    expect(strFromU8(files['tables/person.csv'] ?? expect.unreachable())).toContain(PERSON.name);
    await test.must('session.signIn', { staffId: office.technicianId, pin: PIN });
    expect(await test.ask('persons.export', { partyId })).toMatchObject({ error: { code: 'not-allowed' } });
    expect(await test.ask('persons.erase', { partyId, typedName: PERSON.name, alsoCopies: false })).toMatchObject({
      error: { code: 'not-allowed' },
    });
  });
});
