/** Puts together the record of one run that is sealed, or shown as a draft before it is. Nothing is judged or worked out here. */
import { calibrationOn } from '../../domain/judgement/proof/calibrationOn.ts';
import { siteDay } from '../../domain/judgement/proof/siteDay.ts';
import type { ModelSheet, StepItem } from '../../domain/procedure/modelSheet.ts';
import type { RecordedAnswer } from '../../domain/procedure/runRecord.ts';
import { stepsOfList } from '../../domain/procedure/stepListOf.ts';
import { stoppingNotices } from '../../domain/recalls/openNotices.ts';
import { canonicalJson, sha256Hex } from './canonicalJson.ts';
import type { Disclosure } from './commitment.ts';
import {
  DRAFT_SCHEMA,
  type DraftRecord,
  draftRecord,
  RECORD_SCHEMA,
  type SealedRecord,
  sealedRecord,
} from './sealedRecord.ts';
import type { CrewAtVisit, PartyAtVisit, RecordInput, SealPosition } from './sealInput.ts';
import { type Personal, personal, sealValues } from './sealValues.ts';

/** `newSalt` gives 16 or more fresh random bytes as hexadecimal digits each time it is called. */
export function buildSealedRecord(
  input: RecordInput & { readonly seal: SealPosition },
  newSalt: () => string,
): { readonly record: SealedRecord; readonly disclosures: readonly Disclosure[] } {
  const { seal } = input;
  const open = {
    schema: RECORD_SCHEMA,
    seal: {
      sequence: seal.sequence,
      kind: seal.kind,
      previousSha256: seal.previousSha256,
      amends: seal.amends && {
        sha256: seal.amends.sha256,
        reason: needed(seal.amends.reason, input.subjectPartyId),
      },
      sealedAt: seal.sealedAt,
      sealedById: seal.sealedById,
    },
    ...body(input),
  };
  const { sealed, disclosures } = sealValues(open, newSalt);
  return { record: sealedRecord.parse(sealed), disclosures };
}

/** The same content with no place in a chain: what a packet can show before the visit is signed. */
export function buildDraftRecord(
  input: RecordInput,
  newSalt: () => string,
): { readonly record: DraftRecord; readonly disclosures: readonly Disclosure[] } {
  const { sealed, disclosures } = sealValues({ schema: DRAFT_SCHEMA, ...body(input) }, newSalt);
  return { record: draftRecord.parse(sealed), disclosures };
}

/** A sheet is known by the hash of its canonical JSON. */
export function sheetHash(sheet: ModelSheet): string {
  return sha256Hex(canonicalJson(JSON.parse(JSON.stringify(sheet))));
}

function body(input: RecordInput) {
  const { company, appliance, subjectPartyId } = input;
  return {
    language: input.language,
    unitSystem: input.unitSystem,
    company: {
      name: company.name,
      licenceNumber: company.licenceNumber,
      jurisdiction: company.jurisdiction,
      timeZone: company.timeZone,
      region: company.region,
      country: company.country,
      street: personal(company.street, null),
      postcode: personal(company.postcode, null),
      city: personal(company.city, null),
      phone: personal(company.phone, null),
      email: personal(company.email, null),
    },
    job: { jobId: input.job.jobId, kind: input.job.kind },
    visit: { ...input.visit },
    people: input.crew.map((member) => person(member, input.visit.on)),
    parties: input.parties.map(partyAtVisit),
    site: siteFields(input),
    gasSupply: input.gasSupply && {
      ...input.gasSupply,
      loads: input.gasSupply.loads.map((load) => ({ name: load.name, inputKw: load.inputKw })),
    },
    appliance: {
      applianceId: appliance.applianceId,
      serial: appliance.serial,
      maker: appliance.maker,
      model: appliance.model,
      plateFuel: appliance.plateFuel,
      tagFuel: appliance.tagFuel,
      ratedInputKw: appliance.ratedInputKw,
      ratedInputBasis: appliance.ratedInputBasis,
      position: appliance.position,
      vent: {
        kind: appliance.ventKind,
        lengthM: appliance.ventLengthM,
        elbows: appliance.ventElbows,
        isConcealed: appliance.isVentConcealed,
      },
      dates: appliance.dates,
      fuelState: appliance.fuelState && {
        ...appliance.fuelState,
        proof: personal(appliance.fuelState.proof, subjectPartyId),
      },
    },
    permits: input.permits,
    sheet: sheetAsWalked(input),
    run: recorded(input),
    findings: input.findings.map((finding) => ({
      readingId: finding.readingId,
      subject: finding.subject,
      verdict: finding.verdict,
      proof: {
        proven: finding.proof.proven,
        because: finding.proof.proven ? [] : finding.proof.because,
      },
      blocks: finding.blocks,
      basis: { ...finding.basis, result: finding.basis.result ?? null },
      missing: finding.missing,
      makeSafe: finding.makeSafe,
      leaveFirst: finding.leaveFirst ?? false,
      suggestions: finding.suggestions.map((suggestion) => suggestion.code),
    })),
    computed: input.computed,
  };
}

function person(member: CrewAtVisit, visitOn: string) {
  return {
    staffId: member.staffId,
    name: needed(member.name, null),
    role: member.role,
    licences: member.licences.map((licence) => ({
      number: needed(licence.number, null),
      issuer: licence.issuer,
      place: licence.place,
      licenceClass: licence.licenceClass,
      fuel: licence.fuel,
      maxKw: licence.maxKw,
      validFrom: licence.validFrom,
      validTo: licence.validTo,
      wasValidOnVisitDay: licence.validFrom <= visitOn && visitOn <= licence.validTo,
    })),
    trainings: member.trainings.map((training) => ({
      maker: training.maker,
      modelLine: training.modelLine,
      number: personal(training.number, null),
      validFrom: training.validFrom,
      validTo: training.validTo,
    })),
  };
}

function partyAtVisit({ partyId, party, roles, consents }: PartyAtVisit) {
  return {
    partyId,
    kind: party.kind,
    roles,
    name: needed(party.name, partyId),
    contactName: personal(party.contactName, partyId),
    email: personal(party.email, partyId),
    phone: personal(party.phoneTyped, partyId),
    street: personal(party.street, partyId),
    postcode: personal(party.postcode, partyId),
    city: personal(party.city, partyId),
    region: party.region,
    country: party.country,
    consents,
  };
}

function siteFields({ site, subjectPartyId }: RecordInput) {
  return {
    siteId: site.siteId,
    label: personal(site.label, subjectPartyId),
    street: personal(site.street, subjectPartyId),
    postcode: personal(site.postcode, subjectPartyId),
    city: personal(site.city, subjectPartyId),
    region: site.region,
    country: site.country,
    jurisdiction: site.jurisdiction,
    timeZone: site.timeZone,
    buildingKind: site.buildingKind,
    altitudeM: site.altitudeM,
    systemHeightM: site.systemHeightM,
    systemVolumeL: site.systemVolumeL,
    systemVolumeHow: site.systemVolumeHow,
    coldWaterC: site.coldWaterC,
    glycolKind: site.glycolKind,
    emitters: site.emitters.map(({ emitter, ratedKw }) => ({ emitter, ratedKw })),
  };
}

function sheetAsWalked({ sheet, steps }: RecordInput) {
  return {
    sheetId: sheet.sheetId,
    revision: sheet.revision,
    sha256: sheetHash(sheet),
    title: sheet.title,
    maker: sheet.maker,
    issuedOn: sheet.issuedOn,
    firingPoints: sheet.firingPoints.map((point) => ({ key: point.key, label: point.label })),
    altitude: sheet.altitude,
    inputTolerancePct: sheet.inputTolerancePct,
    cover: sheet.cover,
    steps: stepsOfList(sheet, steps).map((step) => ({
      key: step.key,
      title: step.title,
      items: step.items.map((item) => ({
        key: item.key,
        kind: item.kind,
        label: item.label,
        blocks: item.blocks,
        meets: item.meets,
        quantity: item.kind === 'read' ? item.quantity : null,
        options: item.kind === 'choose' ? item.options.map(({ value, label }) => ({ value, label })) : [],
      })),
    })),
  };
}

function recorded({ run, sheet, steps, subjectPartyId, visit }: RecordInput) {
  const items = new Map<string, StepItem>(
    stepsOfList(sheet, steps).flatMap((step) => step.items.map((item) => [item.key, item] as const)),
  );
  return {
    runId: run.runId,
    kind: run.kind,
    fuel: run.fuel,
    startedAt: run.startedAt,
    openMakeSafes: run.openMakeSafes,
    // One that only informs keeps nobody from anything.
    openNotices: stoppingNotices(run.openNotices).map(({ recallId, title, number, source, isRefused }) => ({
      recallId,
      title,
      number,
      source,
      isRefused,
    })),
    answers: run.answers.map((answer) => ({
      stepKey: answer.stepKey,
      itemKey: answer.itemKey,
      ...valueOrWords(answer, items.get(answer.itemKey), subjectPartyId),
      reason: personal(answer.reason, subjectPartyId),
      instrumentId: answer.instrumentId ?? null,
      byId: answer.byId,
      at: answer.at,
      transcribed: answer.transcribed ?? undefined,
    })),
    readings: run.readings.map((reading) => ({
      ...reading,
      notMeasuredReason: personal(reading.notMeasuredReason, subjectPartyId),
    })),
    holds: run.holds,
    tunings: run.tunings.map((tuning) => ({
      ...tuning,
      interruptedReason: personal(tuning.interruptedReason, subjectPartyId),
    })),
    ...(run.parts === undefined ? {} : { parts: [...run.parts] }),
    ...(run.lockouts === undefined
      ? {}
      : {
          lockouts: [...run.lockouts],
        }),
    photos: run.photos,
    firingPoints: run.firingPoints,
    signOffs: run.signOffs.map((signOff) => ({
      ...signOff,
      name: needed(signOff.name, signOff.staffId === null ? subjectPartyId : null),
    })),
    instruments: run.instruments.map(({ calibrations, ...instrument }) => {
      const onVisit = calibrationOn(calibrations, visit.on);
      return {
        ...instrument,
        calibratedOn: onVisit?.calibratedOn ?? null,
        calibrationDueOn: onVisit?.dueOn ?? null,
        certificate: onVisit?.certificate ?? null,
        calibrations: calibrations.filter((one) =>
          run.readings.some(
            ({ instrumentId, measuredAt }) =>
              instrumentId === instrument.instrumentId &&
              calibrationOn(calibrations, siteDay(Date.parse(measuredAt), run.site.timeZone)) === one,
          ),
        ),
      };
    }),
  };
}

/** Only what comes from a closed list, or is a day or a time, stands in the open; an unknown item counts as free words. */
function valueOrWords(
  answer: RecordedAnswer,
  item: StepItem | undefined,
  partyId: string | null,
): { readonly value: string | null; readonly words: Personal | null } {
  const isOpen =
    item?.kind === 'confirm' || item?.kind === 'choose' || (item?.kind === 'note' && item.holds !== 'text');
  return isOpen ? { value: answer.value, words: null } : { value: null, words: personal(answer.value, partyId) };
}

function needed(value: string, partyId: string | null): Personal {
  const marked = personal(value, partyId);
  if (marked === null) throw new Error('a name is missing where the record needs one');
  return marked;
}
