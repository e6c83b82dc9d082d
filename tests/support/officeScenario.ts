/** An invented small firm, its customer, site and boiler, made through the operations: where most tests begin. */
import type { ModelSheet } from '../../domain/procedure/modelSheet.ts';
import type { InputOf } from '../../electron/contract/index.ts';
import type { TestCore } from './testCore.ts';

export const PIN = '4711';

export const COMPANY: InputOf<'app.completeFirstRun'>['company'] = {
  name: 'Kittiwake Heating',
  street: '3 Slipway Road',
  postcode: 'B4T 2K1',
  city: 'Graven Bay',
  region: null,
  country: 'CA',
  phone: '902 555 0142',
  email: 'office@kittiwake.example',
  licenceNumber: 'GH-2041',
  timeZone: 'America/Halifax',
  unitSystem: 'metric',
  language: 'en',
  jurisdiction: 'north-america',
  emergencyNumber: '902 555 0199',
};

export type Office = {
  readonly ownerId: string;
  readonly technicianId: string;
  readonly helperId: string;
  readonly analyserId: string;
  readonly customerId: string;
  readonly siteId: string;
  readonly applianceId: string;
};

export async function setUpFirm(
  test: Pick<TestCore, 'must'>,
): Promise<Pick<Office, 'ownerId' | 'technicianId' | 'helperId'>> {
  const { people } = await test.must('app.completeFirstRun', {
    company: COMPANY,
    people: [
      { name: 'Maren Oduya', initials: 'MO', roles: ['owner', 'dispatcher'], pin: PIN },
      { name: 'Tobias Reyle', initials: 'TR', roles: ['technician'], pin: PIN },
      { name: 'Ines Calloway', initials: 'IC', roles: ['helper'], pin: PIN },
    ],
  });
  const [owner, technician, helper] = people;
  if (owner === undefined || technician === undefined || helper === undefined) throw new Error('three people expected');
  return { ownerId: owner.staffId, technicianId: technician.staffId, helperId: helper.staffId };
}

export type OfficeOverrides = {
  readonly sheetId?: string;
  /** Imported first; the boiler is one of its models. */
  readonly sheet?: ModelSheet;
  readonly ratedInputKw?: number;
  readonly altitudeM?: number;
  readonly installedOn?: string;
  readonly compensation?: 'temperature' | 'temperature-pressure';
  readonly site?: Partial<InputOf<'sites.create'>['site']>;
  readonly gasSupply?: Partial<InputOf<'sites.setGasSupply'>['gasSupply']>;
  readonly appliance?: Partial<InputOf<'appliances.create'>['appliance']>;
};

export async function setUpOffice(test: Pick<TestCore, 'must'>, overrides: OfficeOverrides = {}): Promise<Office> {
  const crew = await setUpCrew(test);
  return { ...crew, ...(await setUpHouse(test, overrides)) };
}

export type Crew = Pick<Office, 'ownerId' | 'technicianId' | 'helperId' | 'analyserId'>;

/** The firm with the technician's licence and the analyser; the owner is signed in. */
export async function setUpCrew(test: Pick<TestCore, 'must'>): Promise<Crew> {
  const firm = await setUpFirm(test);
  await test.must('session.signIn', { staffId: firm.ownerId, pin: PIN });
  await test.must('staff.addLicence', {
    staffId: firm.technicianId,
    licence: {
      number: 'G2-88120',
      issuer: 'Provincial gas board',
      place: 'Nova Scotia',
      licenceClass: 'G2',
      fuel: null,
      maxKw: 117,
      validFrom: '2025-01-01',
      validTo: '2027-12-31',
    },
  });
  const { instrumentId: analyserId } = await test.must('instruments.create', {
    kind: 'analyser',
    label: 'Analyser 1',
    serial: 'A-1001',
    accuracy: { o2DryVolPct: { abs: 0.3, relPct: 0 }, coPpm: { abs: 5, relPct: 5 }, flueGasC: { abs: 1, relPct: 0.5 } },
    // It has a pressure port: one instrument for flue and gas side, as many carry.
    rangeMax: {
      coPpm: 4000,
      inletPressureMbarG: 150,
      burnerPressureMbarG: 150,
      tightnessPressureMbarG: 150,
      tightnessDropMbar: 150,
    },
    keptById: firm.technicianId,
  });
  await test.must('instruments.addCalibration', {
    instrumentId: analyserId,
    calibratedOn: '2025-11-10',
    dueOn: '2026-11-09',
    certificate: 'C-553',
  });
  return { ...firm, analyserId };
}

/** A customer, or one who is there already, with a site, its gas and one boiler. */
export async function setUpHouse(
  test: Pick<TestCore, 'must'>,
  overrides: OfficeOverrides = {},
  knownCustomerId: string | null = null,
): Promise<Pick<Office, 'customerId' | 'siteId' | 'applianceId'>> {
  if (overrides.sheet !== undefined) {
    await test.must('sheets.import', { fileName: 'sheet.json', text: JSON.stringify(overrides.sheet) });
  }
  const customerId = knownCustomerId ?? (await createCustomer(test));
  const { siteId } = await test.must('sites.create', {
    customerId,
    site: {
      label: null,
      street: '9 Fathom Street',
      postcode: 'B4T 1A6',
      city: 'Graven Bay',
      region: null,
      country: 'CA',
      latitude: 44.65,
      longitude: -63.57,
      jurisdiction: 'north-america',
      timeZone: 'America/Halifax',
      buildingKind: 'home',
      access: 'side door',
      altitudeM: overrides.altitudeM ?? 40,
      systemHeightM: 5,
      systemVolumeL: 90,
      systemVolumeHow: 'estimated',
      coldWaterC: 8,
      glycolKind: null,
      emitters: [{ emitter: 'panel-radiators', zone: 'whole house', ratedKw: 14 }],
      ...overrides.site,
    },
  });
  await test.must('sites.setGasSupply', {
    siteId,
    gasSupply: {
      kind: 'meter',
      fuel: 'natural-gas',
      number: 'M-77',
      dialM3: 0.028316846592,
      compensation: overrides.compensation ?? 'temperature',
      capacityM3PerH: 7.1,
      regulator: 'one stage',
      nominalMbarG: 17.4,
      tankVolumeL: null,
      heatingValueMjPerM3: 38.0,
      heatingValueTyped: '38.0 MJ/m³',
      heatingValueSource: 'utility, monthly mean',
      heatingValueOn: '2026-02-01',
      loads: [{ name: 'range', inputKw: 15, applianceId: null }],
      ...overrides.gasSupply,
    },
  });
  const { applianceId } = await test.must('appliances.create', {
    siteId,
    appliance: {
      serial: 'TK204417',
      maker: 'Invented maker',
      model: 'T 24',
      sheetId: overrides.sheet?.sheetId ?? overrides.sheetId ?? null,
      plateFuel: 'natural-gas',
      tagFuel: null,
      ratedInputKw: overrides.ratedInputKw ?? 25,
      ratedInputBasis: 'gross',
      ventKind: 'polypropylene 80 mm',
      ventLengthM: 4,
      ventElbows: 2,
      isVentConcealed: false,
      note: null,
      ...overrides.appliance,
    },
    position: 'basement',
    dates: [{ kind: 'installed', on: overrides.installedOn ?? '2026-02-26', precision: 'day', source: 'fitter' }],
  });
  return { customerId, siteId, applianceId };
}

async function createCustomer(test: Pick<TestCore, 'must'>): Promise<string> {
  const { customerId } = await test.must('customers.create', {
    party: {
      kind: 'person',
      name: 'Lowri Kestrel',
      contactName: null,
      language: 'en',
      email: 'lowri@kestrel.example',
      phoneTyped: '902 555 0111',
      street: '9 Fathom Street',
      postcode: 'B4T 1A6',
      city: 'Graven Bay',
      region: null,
      country: 'CA',
      note: null,
    },
    note: null,
  });
  return customerId;
}
