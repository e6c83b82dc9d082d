import { describe, expect, it, vi } from 'vitest';
import { packetGap } from '../../../electron/contract/registrations.ts';
import { packetGaps } from '../../../electron/documents/packet/packetGaps.ts';
import { gapText, PACKET_GAPS } from '../../../electron/documents/packet/packetGapWords.ts';
import type { PacketFacts } from '../../../electron/documents/packet/packetInput.ts';
import { buildSealedRecord } from '../../../electron/sealing/buildSealedRecord.ts';
import type { RecordInput } from '../../../electron/sealing/sealInput.ts';
import { calibratedUntil } from '../../support/calibratedUntil.ts';
import { sampleDraft, samplePacket } from '../../support/packetSample.ts';
import { SAMPLE_IDS, sampleRecordInput, sampleSalts, sampleSeal } from '../../support/recordSample.ts';

// Whole documents and chains on a machine that is busy with other tests.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

function factsOf(input: RecordInput, changes: Partial<PacketFacts> = {}): PacketFacts {
  const built = buildSealedRecord({ ...input, seal: sampleSeal() }, sampleSalts());
  return { ...samplePacket(), record: built.record, disclosures: built.disclosures, ...changes };
}

function codesOf(input: RecordInput, changes: Partial<PacketFacts> = {}): readonly string[] {
  return packetGaps(factsOf(input, changes), []).map((gap) =>
    gap.detail === null ? gap.code : `${gap.code}:${gap.detail}`,
  );
}

const full = sampleRecordInput();
const { run, site, appliance } = full;
const withRun = (changes: Partial<RecordInput['run']>): RecordInput => ({ ...full, run: { ...run, ...changes } });
const [owner, fitter, supplier] = full.parties;
if (!owner || !fitter || !supplier) throw new Error('the sample has three parties');
const withOwner = (changes: Partial<RecordInput['parties'][number]['party']>): RecordInput => ({
  ...full,
  parties: [{ ...owner, party: { ...owner.party, ...changes } }, fitter, supplier],
});
const withAppliance = (changes: Partial<RecordInput['appliance']>): RecordInput => ({
  ...full,
  appliance: { ...appliance, ...changes },
});
const withoutReading = (quantity: string, point?: string): RecordInput =>
  withRun({
    readings: run.readings.filter((one) => one.quantity !== quantity || (point !== undefined && one.point !== point)),
  });
const withoutPhoto = (itemKey: string): RecordInput =>
  withRun({ photos: run.photos.filter((one) => one.itemKey !== itemKey) });

const notMovedIn = withAppliance({ dates: appliance.dates.filter((one) => one.kind !== 'occupied') });
const { cover } = full.sheet;
if (cover === null) throw new Error('the sample has terms of cover');
const countedFrom = (kind: 'occupied' | 'title-transfer'): RecordInput => ({
  ...notMovedIn,
  sheet: { ...full.sheet, cover: { ...cover, registration: { ...cover.registration, countedFrom: kind } } },
});

describe('packetGaps', () => {
  it('finds nothing in a packet that holds everything', () => {
    expect(codesOf(full)).toEqual([]);
  });

  it.each<readonly [string, RecordInput]>([
    ['owner-missing', { ...full, parties: [fitter, supplier] }],
    ['owner-phone-missing', withOwner({ phoneTyped: null })],
    ['owner-email-missing', withOwner({ email: null })],
    ['owner-address-missing', withOwner({ street: null })],
    [
      'occupant-missing',
      {
        ...full,
        site: { ...site, buildingKind: 'rental' },
        parties: [{ ...owner, roles: ['owner'] }, fitter, supplier],
      },
    ],
    ['altitude-missing', { ...full, site: { ...site, altitudeM: null } }],
    ['installer-missing', { ...full, parties: [owner, supplier] }],
    ['supplier-missing', { ...full, parties: [owner, fitter] }],
    ['permit-missing', { ...full, permits: [] }],
    ['company-licence-missing', { ...full, company: { ...full.company, licenceNumber: null } }],
    ['licence-missing', { ...full, crew: full.crew.map((member) => ({ ...member, licences: [] })) }],
    ['licence-not-valid', { ...full, visit: { ...full.visit, on: '2023-12-31' } }],
    ['fuel-missing', withAppliance({ plateFuel: null })],
    ['conversion-kit-missing', withAppliance({ plateFuel: 'propane' })],
    [
      'orifice-missing',
      withAppliance({
        plateFuel: 'propane',
        fuelState: { fuel: 'natural-gas', fromOn: '2026-04-14', conversionKit: 'K-31', orifice: null, proof: null },
      }),
    ],
    ['rated-input-missing', withAppliance({ ratedInputKw: null })],
    ['vent-missing', withAppliance({ ventKind: null })],
    ['vent-length-missing', withAppliance({ ventLengthM: null })],
    ['date-missing:made', withAppliance({ dates: appliance.dates.filter((one) => one.kind !== 'made') })],
    ['date-missing:sold', withAppliance({ dates: appliance.dates.filter((one) => one.kind !== 'sold') })],
    ['date-missing:installed', withAppliance({ dates: appliance.dates.filter((one) => one.kind !== 'installed') })],
    ['date-missing:started', withAppliance({ dates: appliance.dates.filter((one) => one.kind !== 'started') })],
    ['date-missing:occupied', { ...notMovedIn, site: { ...site, buildingKind: 'new-build' } }],
    ['date-missing:occupied', countedFrom('occupied')],
    ['date-missing:occupied', countedFrom('title-transfer')],
    ['combustion-missing:CO, Mid fire', withoutReading('coPpm', 'mid')],
    ['combustion-missing:Flue gas temperature, Low fire', withoutReading('flueGasC', 'low')],
    ['gas-pressure-missing:static', withoutReading('inletPressureMbarG', 'static')],
    ['gas-pressure-missing:dynamic', withoutReading('inletPressureMbarG', 'dynamic')],
    ['clocked-input-missing', withoutReading('meterSeconds')],
    ['system-pressure-missing', withoutReading('systemPressureBarG', 'cold')],
    ['water-quality-missing:hardnessMmolPerL', withoutReading('hardnessMmolPerL')],
    [
      'water-treatment-missing',
      withRun({ answers: run.answers.filter((one) => !['treatment', 'flush'].includes(one.itemKey)) }),
    ],
    ['photo-missing:rating plate', withoutPhoto('plate-photo')],
    ['photo-missing:vent termination', withoutPhoto('vent-end-photo')],
    ['photo-missing:condensate route', withoutPhoto('condensate-photo')],
    ['photo-missing:analyser, high fire', withoutPhoto('high-analyser-photo')],
    ['photo-missing:whole installation', withoutPhoto('whole-photo')],
    ['sign-off-missing', withRun({ signOffs: run.signOffs.filter((one) => one.by !== 'licensed') })],
    [
      'handover-missing',
      withRun({
        signOffs: run.signOffs.filter((one) => one.by !== 'occupant'),
        answers: run.answers.filter((one) => one.stepKey !== 'handover'),
      }),
    ],
    ['make-safe-open', withRun({ openMakeSafes: 1 })],
    [
      'calibration-lapsed:Flue gas analyser A',
      withRun({
        instruments: run.instruments.map((one) => ({
          ...one,
          calibrations: calibratedUntil('2026-04-13'),
        })),
      }),
    ],
    [
      'calibration-missing:Flue gas analyser A',
      withRun({ instruments: run.instruments.map((one) => ({ ...one, calibrations: [] })) }),
    ],
    [
      'instrument-missing',
      withRun({
        readings: run.readings.map((one) => (one.quantity === 'coPpm' ? { ...one, instrumentId: null } : one)),
      }),
    ],
  ])('notices %s', (code, input) => {
    expect(codesOf(input)).toContain(code);
  });

  it('asks nobody when they moved into a house that was lived in before, where no term counts from it', () => {
    expect(codesOf(notMovedIn)).toEqual([]);
  });

  it('asks for oil neither gas pressure nor a meter timing', () => {
    const oil: RecordInput = { ...full, run: { ...run, fuel: 'heating-oil', readings: [] } };
    expect(codesOf(oil).filter((code) => code.startsWith('gas-') || code.startsWith('clocked'))).toEqual([]);
  });

  it('takes a written reason for a meter timing that was not possible', () => {
    const timing = run.readings.find((one) => one.quantity === 'meterSeconds');
    if (!timing) throw new Error('the sample times the meter');
    const readings = [
      ...run.readings.filter((one) => one.quantity !== 'meterSeconds'),
      { ...timing, valueOwn: null, notMeasuredReason: 'tank: no meter' },
    ];
    expect(codesOf(withRun({ readings }))).toEqual([]);
  });

  it('counts an erased owner as missing', () => {
    const facts = factsOf(full);
    const disclosures = facts.disclosures.map((one) =>
      one.partyId === SAMPLE_IDS.owner ? { ...one, salt: null, value: null } : one,
    );
    expect(packetGaps({ ...facts, disclosures }, []).map((gap) => gap.code)).toContain('owner-missing');
  });

  it('wants the owner’s consent unless the owner registers', () => {
    const silent: RecordInput = { ...full, parties: full.parties.map((one) => ({ ...one, consents: [] })) };
    const registration = { ...samplePacket().registration, ownerConsentOn: null };
    expect(codesOf(silent, { registration })).toEqual(['consent-missing']);
    expect(codesOf(silent, { registration: { ...registration, by: 'owner' } })).toEqual([]);
  });

  it('wants the file of each recorded photo, unaltered', () => {
    const [first, ...rest] = samplePacket().photos;
    if (!first) throw new Error('the sample has photos');
    expect(codesOf(full, { photos: rest })).toEqual(['photo-file-missing:Photo of the data plate']);
    const altered = { ...first, bytes: new Uint8Array([...first.bytes, 0]) };
    expect(codesOf(full, { photos: [altered, ...rest] })).toEqual(['photo-file-missing:Photo of the data plate']);
  });

  it('wants firm, licence and record of each later service', () => {
    const service = {
      on: '2027-04-10',
      firm: 'Harrow Creek Heating',
      personName: null,
      licenceNumber: null,
      recordSha256: null,
      invoiceNumber: '4411',
    };
    expect(codesOf(full, { services: [service] })).toEqual(['service-proof-incomplete:2027-04-10']);
  });

  it('passes on what the sheet still asks for, with its place', () => {
    const blocker = { stepKey: 'combustion-low', itemKey: 'low-flue', because: [{ code: 'too-few-samples' }] };
    expect(packetGaps(factsOf(full), [blocker])).toEqual([
      {
        code: 'sheet-item-open',
        where: 'visit',
        stepKey: 'combustion-low',
        itemKey: 'low-flue',
        detail: 'Flue gas (too few samples)',
      },
    ]);
  });

  it('says that a draft is not sealed', () => {
    expect(packetGaps(sampleDraft(), []).map((gap) => gap.code)).toEqual(['not-sealed']);
  });

  it('gives only gaps the contract knows, each with words', () => {
    const empty: RecordInput = {
      ...full,
      parties: [],
      crew: [],
      permits: [],
      run: { ...run, answers: [], readings: [], photos: [], signOffs: [], instruments: [] },
    };
    const gaps = packetGaps(factsOf(empty), [{ stepKey: null, itemKey: null, because: [] }]);
    expect(gaps.length).toBeGreaterThan(20);
    for (const gap of gaps) {
      expect(packetGap.safeParse(gap).success).toBe(true);
      expect(Object.hasOwn(PACKET_GAPS, gap.code)).toBe(true);
      expect(gapText(gap)).toMatch(/^\S.{3,}/u);
    }
  });
});
