/**
 * What a registration packet still lacks. The list is common practice of makers' registration desks (no published
 * source); whatever the sheet asks for beyond it comes in as blockers of the run's progress.
 */
import { regionOf } from '../../../domain/judgement/regions.ts';
import type { PacketGap } from '../../contract/registrations.ts';
import { sha256Hex } from '../../sealing/canonicalJson.ts';
import { ERASED, revealRecord } from '../../sealing/revealRecord.ts';
import { isSealed } from '../../sealing/sealedRecord.ts';
import { calibrationOfReading, dayAtSite } from './calibrationOfReading.ts';
import { type GapCode, PACKET_GAPS } from './packetGapWords.ts';
import type { PacketFacts } from './packetInput.ts';
import type { OpenRecord } from './packetView.ts';
import { asWords } from './quantityText.ts';

/** As the procedure engine gives them. */
export type RegistrationBlocker = {
  readonly stepKey: string | null;
  readonly itemKey: string | null;
  readonly because: readonly { readonly code: string }[];
};

export function packetGaps(facts: PacketFacts, registrationBlockers: readonly RegistrationBlocker[]): PacketGap[] {
  const record = revealRecord(facts.record, facts.disclosures);
  return [
    ...(isSealed(facts.record) ? [] : [gap('not-sealed')]),
    ...peopleGaps(record),
    ...siteGaps(record),
    ...licenceGaps(record),
    ...applianceGaps(record),
    ...dateGaps(record),
    ...readingGaps(record),
    ...workGaps(record),
    ...instrumentGaps(record),
    ...photoGaps(record, facts),
    ...registrationGaps(record, facts),
    ...registrationBlockers.map((blocker) => itemGap(record, blocker)),
  ];
}

function gap(code: GapCode, detail: string | null = null, place: Partial<PacketGap> = {}): PacketGap {
  return { code, where: PACKET_GAPS[code].where, stepKey: null, itemKey: null, detail, ...place };
}

function lacks(text: string | null | undefined): boolean {
  return text === null || text === undefined || text.trim() === '' || text === ERASED;
}

function peopleGaps(record: OpenRecord): PacketGap[] {
  const owner = record.parties.find((party) => party.roles.includes('owner'));
  if (!owner || lacks(owner.name)) return [gap('owner-missing')];
  const gaps: PacketGap[] = [];
  if (lacks(owner.phone)) gaps.push(gap('owner-phone-missing'));
  if (lacks(owner.email)) gaps.push(gap('owner-email-missing'));
  if (lacks(owner.street) || lacks(owner.city)) gaps.push(gap('owner-address-missing'));
  const mayLiveElsewhere = record.site.buildingKind !== 'home';
  const hasOccupant = record.parties.some((party) => party.roles.includes('occupant') && !lacks(party.name));
  if (mayLiveElsewhere && record.site.buildingKind !== 'commercial' && !hasOccupant) gaps.push(gap('occupant-missing'));
  return gaps;
}

function siteGaps(record: OpenRecord): PacketGap[] {
  const gaps: PacketGap[] = [];
  const hasParty = (role: 'fitter' | 'supplier') =>
    record.parties.some((party) => party.roles.includes(role) && !lacks(party.name));
  if (lacks(record.site.street) || lacks(record.site.city)) gaps.push(gap('site-address-missing'));
  if (record.site.altitudeM === null) gaps.push(gap('altitude-missing'));
  if (!hasParty('fitter')) gaps.push(gap('installer-missing'));
  if (!hasParty('supplier')) gaps.push(gap('supplier-missing'));
  // Elsewhere a notification after the work, or nothing at all, takes the permit's place.
  if (isNorthAmerica(record) && record.permits.length === 0) gaps.push(gap('permit-missing'));
  return gaps;
}

function isNorthAmerica(record: OpenRecord): boolean {
  return ['US', 'CA'].includes(record.site.country) || regionOf(record.site.jurisdiction) === 'north-america';
}

function licenceGaps(record: OpenRecord): PacketGap[] {
  const gaps: PacketGap[] = [];
  if (lacks(record.company.licenceNumber)) gaps.push(gap('company-licence-missing'));
  const inCharge = record.people.filter((person) => person.role !== 'helper');
  const licences = inCharge.flatMap((person) => person.licences);
  if (licences.every((licence) => lacks(licence.number) || lacks(licence.licenceClass))) {
    gaps.push(gap('licence-missing'));
  } else if (!licences.some((licence) => licence.wasValidOnVisitDay)) {
    gaps.push(gap('licence-not-valid'));
  }
  return gaps;
}

function applianceGaps(record: OpenRecord): PacketGap[] {
  const { appliance, run } = record;
  const gaps: PacketGap[] = [];
  if (lacks(appliance.model)) gaps.push(gap('model-missing'));
  if (lacks(appliance.serial)) gaps.push(gap('serial-missing'));
  if (appliance.plateFuel === null) gaps.push(gap('fuel-missing'));
  else if (appliance.plateFuel !== run.fuel) {
    if (lacks(appliance.fuelState?.conversionKit)) gaps.push(gap('conversion-kit-missing'));
    if (lacks(appliance.fuelState?.orifice)) gaps.push(gap('orifice-missing'));
  }
  if (appliance.ratedInputKw === null) gaps.push(gap('rated-input-missing'));
  if (lacks(appliance.vent.kind)) gaps.push(gap('vent-missing'));
  if (appliance.vent.lengthM === null) gaps.push(gap('vent-length-missing'));
  if (run.openMakeSafes !== '0') gaps.push(gap('make-safe-open'));
  const amendments = record.schema === 'lightoff.record/1' ? (record.seal.amendments ?? []) : [];
  for (const what of new Set(amendments.filter(({ judged }) => judged?.length).map((one) => one.what)))
    gaps.push(gap('amended-outside', what));
  for (const { title, number } of run.openNotices ?? [])
    gaps.push(gap('notice-open', number === null ? title : `${title} (${number})`));
  return gaps;
}

function dateGaps(record: OpenRecord): PacketGap[] {
  const known = new Set(record.appliance.dates.map((date) => date.kind));
  const missing = (['made', 'sold', 'installed', 'started'] as const).filter((kind) => !known.has(kind));
  const hasOccupancy = known.has('occupied') || known.has('title-transfer');
  const needsOccupancy = record.site.buildingKind === 'new-build' || countsFromOccupancy(record);
  return [...missing, ...(hasOccupancy || !needsOccupancy ? [] : (['occupied'] as const))].map((kind) =>
    gap('date-missing', kind),
  );
}

/** Nobody is asked when people moved into a house they have always lived in, unless the maker counts from it. */
function countsFromOccupancy({ sheet: { cover } }: OpenRecord): boolean {
  const starts = cover === null ? [] : [cover.registration.countedFrom, ...cover.terms.map((term) => term.countedFrom)];
  return starts.some((start) => start === 'occupied' || start === 'title-transfer');
}

function readingGaps(record: OpenRecord): PacketGap[] {
  const current = record.run.readings.filter((reading) => reading.supersededById === null);
  const hasValue = (quantity: string, point: string | null) =>
    current.some(
      (one) => one.quantity === quantity && (point === null || one.point === point) && one.valueOwn !== null,
    );
  const isAnswered = (quantity: string) =>
    current.some((one) => one.quantity === quantity && (one.valueOwn !== null || one.notMeasuredReason !== null));
  const gaps: PacketGap[] = [];
  for (const point of record.sheet.firingPoints) {
    const hasBurntGas = hasValue('o2DryVolPct', point.key) || hasValue('co2DryVolPct', point.key);
    if (!hasBurntGas) gaps.push(gap('combustion-missing', `O₂ or CO₂, ${point.label}`));
    if (!hasValue('coPpm', point.key)) gaps.push(gap('combustion-missing', `CO, ${point.label}`));
    if (!hasValue('flueGasC', point.key)) gaps.push(gap('combustion-missing', `Flue gas temperature, ${point.label}`));
  }
  if (record.run.fuel !== 'heating-oil') {
    if (!hasValue('inletPressureMbarG', 'static')) gaps.push(gap('gas-pressure-missing', 'static'));
    if (!hasValue('inletPressureMbarG', 'dynamic')) gaps.push(gap('gas-pressure-missing', 'dynamic'));
    if (!isAnswered('meterSeconds')) gaps.push(gap('clocked-input-missing'));
  }
  if (!hasValue('systemPressureBarG', 'cold')) gaps.push(gap('system-pressure-missing'));
  if (record.sheet.cover?.conditions.waterQualityRecorded !== false) {
    for (const quantity of ['waterPh', 'hardnessMmolPerL', 'conductivityUsPerCm']) {
      if (!isAnswered(quantity)) gaps.push(gap('water-quality-missing', quantity));
    }
  }
  return gaps;
}

/** The sheet tags each item with the demands of general practice it meets; those tags are what is looked for. */
function workGaps(record: OpenRecord): PacketGap[] {
  const items = record.sheet.steps.flatMap((step) => step.items);
  const answered = new Set(
    record.run.answers
      .filter((one) => one.value !== null || one.words !== null || one.reason !== null)
      .map((one) => one.itemKey),
  );
  for (const reading of record.run.readings) answered.add(reading.itemKey);
  const isMet = (tag: string) =>
    items.some((item) => answered.has(item.key) && item.meets.some((one) => one.startsWith(tag)));
  const gaps: PacketGap[] = [];
  if (!isMet('2.0/safeties')) gaps.push(gap('safeties-missing'));
  if (!isMet('2.0/controls')) gaps.push(gap('controls-missing'));
  const treatment = items.filter((item) => item.kind === 'note' && item.meets.includes('2.4/water-quality'));
  if (treatment.length > 0 && !treatment.some((item) => answered.has(item.key)))
    gaps.push(gap('water-treatment-missing'));
  const occupantSigned = record.run.signOffs.some((one) => one.by === 'occupant');
  if (!occupantSigned && !isMet('2.0/handover')) gaps.push(gap('handover-missing'));
  if (!record.run.signOffs.some((one) => one.by === 'licensed')) gaps.push(gap('sign-off-missing'));
  return gaps;
}

const FLUE = new Set(['o2DryVolPct', 'co2DryVolPct', 'coPpm', 'flueGasC']);

function instrumentGaps(record: OpenRecord): PacketGap[] {
  const flue = record.run.readings.filter(
    (one) => one.supersededById === null && one.valueOwn !== null && FLUE.has(one.quantity),
  );
  const gaps: PacketGap[] = [];
  if (flue.some((one) => one.instrumentId === null)) gaps.push(gap('instrument-missing'));
  const used = new Set(flue.map((one) => one.instrumentId));
  for (const instrument of record.run.instruments) {
    if (!used.has(instrument.instrumentId)) continue;
    const read = flue
      .filter(({ instrumentId }) => instrumentId === instrument.instrumentId)
      .map(({ measuredAt }) => ({
        day: dayAtSite(measuredAt, record.site.timeZone),
        calibration: calibrationOfReading(instrument, measuredAt, record.site.timeZone),
      }));
    if (read.some(({ calibration }) => calibration === null)) gaps.push(gap('calibration-missing', instrument.label));
    else if (read.some(({ day, calibration }) => (calibration?.dueOn ?? '') < day))
      gaps.push(gap('calibration-lapsed', instrument.label));
  }
  return gaps;
}

/** Each photo a registration desk expects, and the tags of the sheet's items that give it. */
const PHOTOS = [
  { label: 'rating plate', tags: ['2.13/photo/data-plate'] },
  { label: 'vent termination', tags: ['2.13/photo/termination'] },
  { label: 'condensate route', tags: ['2.13/photo/condensate-route'] },
  { label: 'analyser, high fire', tags: ['2.13/photo/analyser-high'] },
  { label: 'analyser, low fire', tags: ['2.13/photo/analyser-low'] },
  { label: 'whole installation', tags: ['2.13/photo/whole-install'] },
] as const;

function photoGaps(record: OpenRecord, facts: PacketFacts): PacketGap[] {
  const items = record.sheet.steps.flatMap((step) => step.items);
  const taken = new Set(record.run.photos.map((photo) => photo.itemKey));
  const gaps = PHOTOS.filter(
    ({ tags }) => !items.some((item) => taken.has(item.key) && tags.some((tag) => item.meets.includes(tag))),
  ).map(({ label }) => gap('photo-missing', label));
  const files = new Set(
    facts.photos
      .filter((photo) => photo.bytes.length === 0 || sha256Hex(photo.bytes) === photo.sha256)
      .map((one) => one.sha256),
  );
  const lost = record.run.photos.filter((photo) => !files.has(photo.sha256));
  return [
    ...gaps,
    ...lost.map((photo) =>
      gap('photo-file-missing', items.find((item) => item.key === photo.itemKey)?.label ?? photo.itemKey, {
        itemKey: photo.itemKey,
      }),
    ),
  ];
}

function registrationGaps(record: OpenRecord, facts: PacketFacts): PacketGap[] {
  const gaps: PacketGap[] = [];
  const hasConsent =
    facts.registration.ownerConsentOn !== null ||
    record.parties.some(
      (party) =>
        party.roles.includes('owner') && party.consents.some((one) => one.purpose === 'registration' && one.granted),
    );
  if (facts.registration.by !== 'owner' && !hasConsent) gaps.push(gap('consent-missing'));
  for (const service of facts.services) {
    const isComplete = !lacks(service.firm) && !lacks(service.licenceNumber) && service.recordSha256 !== null;
    if (!isComplete) gaps.push(gap('service-proof-incomplete', service.on));
  }
  return gaps;
}

function itemGap(record: OpenRecord, blocker: RegistrationBlocker): PacketGap {
  const item = record.sheet.steps.flatMap((step) => step.items).find((one) => one.key === blocker.itemKey);
  const why = blocker.because.map((reason) => asWords(reason.code).toLowerCase()).join(', ');
  const what = item?.label ?? blocker.itemKey ?? 'the run as a whole';
  return gap('sheet-item-open', why === '' ? what : `${what} (${why})`, {
    stepKey: blocker.stepKey,
    itemKey: blocker.itemKey,
  });
}
