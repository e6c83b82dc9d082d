/**
 * What is sealed for one run of a visit: everything recorded, what it was judged by, and what came out, as it stood at
 * sealing. Numbers are plain decimals in text, personal values are commitments, instants are UTC, days are 'YYYY-MM-DD'.
 * The published form of this schema is assets/schemas/record-1.schema.json.
 */
import { z } from 'zod';
import { VERDICTS } from '../../domain/judgement/finding.ts';
import { BLOCKS, COVER_DATES, EMITTERS, FUELS } from '../../domain/procedure/modelSheet.ts';
import { CHANNELS, INSTRUMENT_KINDS, PARTY_ROLES, PURPOSES } from '../../domain/vocabulary/people.ts';
import { language, unitSystem } from '../contract/app.ts';
import { crewRole, jobKind, visitOutcome } from '../contract/visits.ts';
import { commitment } from './commitment.ts';
import { decimalText } from './decimalText.ts';

export const RECORD_SCHEMA = 'lightoff.record/1';
/** The same content before it is sealed: it can never pass for a sealed one. */
export const DRAFT_SCHEMA = 'lightoff.draft/1';

const id = z.string().min(1).max(100);
const key = z.string().min(1).max(120);
const words = z.string().max(4000);
const sha256 = z.string().regex(/^[0-9a-f]{64}$/, 'SHA-256 as 64 lower-case hexadecimal digits');
const day = z.iso.date();
const instant = z.iso.datetime();
const fuel = z.enum(FUELS);
/** A key of the quantity catalogue, which grows: an old record must stay readable when the catalogue has moved on. */
const quantity = z.string().regex(/^[a-zA-Z][a-zA-Z0-9]{1,60}$/);
const personal = commitment.nullable();
const number = decimalText.nullable();
const basis = z.strictObject({ kind: z.enum(['maker', 'standard', 'common-practice']), source: words });

const person = z.strictObject({
  staffId: id,
  name: commitment,
  role: crewRole,
  licences: z.array(
    z.strictObject({
      number: commitment,
      issuer: words,
      place: words,
      licenceClass: words,
      /** null: every fuel. */
      fuel: fuel.nullable(),
      /** null: no size line. */
      maxKw: number,
      validFrom: day,
      validTo: day,
      /** On the day of the visit, at the site. */
      wasValidOnVisitDay: z.boolean(),
    }),
  ),
  trainings: z.array(
    z.strictObject({ maker: words, modelLine: words, number: personal, validFrom: day, validTo: day.nullable() }),
  ),
});

const party = z.strictObject({
  partyId: id,
  kind: z.enum(['person', 'firm']),
  roles: z.array(z.enum(PARTY_ROLES)),
  name: commitment,
  contactName: personal,
  email: personal,
  phone: personal,
  street: personal,
  postcode: personal,
  city: personal,
  region: words.nullable(),
  country: words.nullable(),
  consents: z.array(
    z.strictObject({ purpose: z.enum(PURPOSES), channel: z.enum(CHANNELS), granted: z.boolean(), on: day }),
  ),
});

const site = z.strictObject({
  siteId: id,
  label: personal,
  street: personal,
  postcode: personal,
  city: personal,
  region: words.nullable(),
  country: words,
  /** Decides which safety ceilings and which relief rule applied. */
  jurisdiction: words,
  timeZone: words,
  buildingKind: z.enum(['home', 'rental', 'new-build', 'commercial']),
  altitudeM: number,
  systemHeightM: number,
  systemVolumeL: number,
  systemVolumeHow: z.enum(['metered', 'estimated']).nullable(),
  coldWaterC: number,
  glycolKind: z.enum(['propylene', 'ethylene']).nullable(),
  emitters: z.array(z.strictObject({ emitter: z.enum(EMITTERS), ratedKw: number })),
});

const gasSupply = z.strictObject({
  kind: z.enum(['meter', 'tank']),
  fuel,
  number: words.nullable(),
  dialM3: number,
  compensation: z.enum(['none', 'temperature', 'temperature-pressure']).nullable(),
  capacityM3PerH: number,
  regulator: words.nullable(),
  nominalMbarG: number,
  tankVolumeL: number,
  heatingValueMjPerM3: number,
  heatingValueTyped: words.nullable(),
  heatingValueSource: words.nullable(),
  heatingValueOn: day.nullable(),
  loads: z.array(z.strictObject({ name: words, inputKw: number })),
});

const appliance = z.strictObject({
  applianceId: id,
  serial: words,
  maker: words,
  model: words,
  plateFuel: fuel.nullable(),
  tagFuel: fuel.nullable(),
  ratedInputKw: number,
  ratedInputBasis: z.enum(['gross', 'net']),
  position: words.nullable(),
  vent: z.strictObject({
    kind: words.nullable(),
    lengthM: number,
    elbows: number,
    isConcealed: z.boolean().nullable(),
  }),
  /** Kept apart, each with where it comes from and how exact it is. */
  dates: z.array(
    z.strictObject({
      kind: z.enum(COVER_DATES),
      on: day,
      precision: z.enum(['day', 'month', 'year']),
      source: words,
    }),
  ),
  fuelState: z
    .strictObject({
      fuel,
      fromOn: day,
      conversionKit: words.nullable(),
      orifice: words.nullable(),
      proof: personal,
    })
    .nullable(),
});

const altitudeRule = z.discriminatedUnion('method', [
  z.strictObject({ method: z.literal('not-on-sheet') }),
  z.strictObject({ method: z.literal('no-derate'), basis }),
  z.strictObject({
    method: z.literal('per-1000-ft'),
    pct: decimalText,
    fromFt: decimalText,
    countedFrom: z.enum(['sea-level', 'threshold']),
    basis,
  }),
  z.strictObject({
    method: z.literal('bands'),
    bands: z.array(z.strictObject({ fromFt: decimalText, toFt: decimalText, pct: decimalText })),
    basis,
  }),
]);

const coverWindow = z.union([z.strictObject({ days: decimalText }), z.strictObject({ months: decimalText })]);

const cover = z.strictObject({
  terms: z.array(
    z.strictObject({
      part: z.enum(['exchanger', 'parts', 'labour']),
      registeredMonths: decimalText,
      unregisteredMonths: decimalText,
      countedFrom: z.enum(COVER_DATES),
    }),
  ),
  registration: z.strictObject({
    window: coverWindow,
    countedFrom: z.enum([...COVER_DATES, 'earliest']),
    basis,
  }),
  conditions: z.strictObject({
    serviceEveryMonths: decimalText,
    graceMonths: decimalText,
    serviceCountedFrom: z.enum(['anniversary', 'last-service']),
    waterQualityRecorded: z.boolean(),
    licensedInstaller: z.boolean(),
    originalOwner: z.boolean(),
    use: z.enum(['home', 'commercial', 'any']),
    transferWindowDays: number,
  }),
});

/** The sheet the run was walked with. Its words for the steps are here, so that the record reads without the sheet. */
const sheet = z.strictObject({
  sheetId: key,
  revision: key,
  /** Of the sheet's canonical JSON. */
  sha256,
  title: words,
  maker: words.nullable(),
  issuedOn: day,
  firingPoints: z.array(z.strictObject({ key, label: words })),
  altitude: altitudeRule,
  inputTolerancePct: decimalText,
  cover: cover.nullable(),
  steps: z.array(
    z.strictObject({
      key,
      title: words,
      items: z.array(
        z.strictObject({
          key,
          kind: key,
          label: words,
          blocks: z.array(z.enum(BLOCKS)),
          meets: z.array(key),
          quantity: quantity.nullable(),
          options: z.array(z.strictObject({ value: key, label: words })),
        }),
      ),
    }),
  ),
});

/** Absent or null: recorded in the app. Records sealed before there was paper lack it. */
const transcribed = z.strictObject({ typedById: id, typedAt: instant }).nullable().optional();

const run = z.strictObject({
  runId: id,
  kind: jobKind,
  fuel,
  startedAt: instant.nullable(),
  openMakeSafes: decimalText,
  /** Recalls and stop-use notices nobody had settled. Records sealed before they were kept lack them. */
  openNotices: z
    .array(
      z.strictObject({ recallId: id, title: words, number: words.nullable(), source: words, isRefused: z.boolean() }),
    )
    .optional(),
  /** All that were given, oldest first: the last one of an item counts. */
  answers: z.array(
    z.strictObject({
      stepKey: key,
      itemKey: key,
      /** Yes, no, not applicable, the chosen option, a day or a time. */
      value: words.nullable(),
      /** Free words and names. */
      words: personal,
      reason: personal,
      /** What a test was made with. Records sealed before answers named it lack it. */
      instrumentId: id.nullable().optional(),
      byId: id,
      at: instant,
      transcribed,
    }),
  ),
  readings: z.array(
    z.strictObject({
      readingId: id,
      visitId: id,
      stepKey: key,
      itemKey: key,
      quantity,
      point: key.nullable(),
      sample: decimalText,
      typedText: words,
      typedUnit: words,
      /** In the quantity's own unit, which its key names; null: not measured. */
      valueOwn: number,
      comparator: z.enum(['=', '>', '<']),
      notMeasuredReason: personal,
      instrumentId: id.nullable(),
      measuredById: id,
      typedById: id,
      measuredAt: instant,
      supersededById: id.nullable(),
      origin: z.enum(['typed', 'suggestion', 'transcribed', 'imported']),
    }),
  ),
  holds: z.array(
    z.strictObject({
      itemKey: key,
      startedAt: instant,
      requiredS: decimalText,
      endedAt: instant.nullable(),
      clockJumped: z.boolean(),
      transcribed,
    }),
  ),
  tunings: z.array(
    z.strictObject({
      itemKey: key,
      startedAt: instant,
      stages: z.array(z.strictObject({ stageKey: key, reachedAt: instant })),
      finishedAt: instant.nullable(),
      interruptedAt: instant.nullable(),
      interruptedReason: personal,
      transcribed,
    }),
  ),
  /** Records sealed before they were kept lack both. */
  parts: z
    .array(
      z.strictObject({
        rowId: id,
        itemKey: key,
        partKey: key,
        label: words,
        partNumber: words,
        serial: words.nullable(),
        byId: id,
        at: instant,
      }),
    )
    .optional(),
  lockouts: z
    .array(
      z.strictObject({
        rowId: id,
        itemKey: key,
        happenedAt: instant,
        code: words.nullable(),
        outdoorTypedText: words.nullable(),
        outdoorTypedUnit: words.nullable(),
        outdoorC: number,
        byId: id,
        at: instant,
      }),
    )
    .optional(),
  photos: z.array(
    z.strictObject({
      itemKey: key,
      attachmentId: id,
      sha256,
      takenAt: instant,
      /** Of the copy without place that goes out in place of the original. */
      copySha256: sha256.optional(),
    }),
  ),
  firingPoints: z.array(z.strictObject({ firingPoint: key, reachedAt: instant, transcribed })),
  signOffs: z.array(
    z.strictObject({
      itemKey: key,
      by: z.enum(['licensed', 'occupant']),
      name: commitment,
      staffId: id.nullable(),
      at: instant,
      signatureSha256: sha256.optional(),
      transcribed,
    }),
  ),
  instruments: z.array(
    z.strictObject({
      instrumentId: id,
      label: words,
      serial: words,
      kind: z.enum(INSTRUMENT_KINDS),
      /** As it stood on the day of the visit. */
      calibratedOn: day.nullable(),
      calibrationDueOn: day.nullable(),
      certificate: words.nullable(),
      /** Those that counted for a reading of this run, by its day, oldest first. Records sealed before lack them. */
      calibrations: z
        .array(z.strictObject({ calibratedOn: day, dueOn: day, certificate: words.nullable() }))
        .optional(),
      accuracy: z.record(quantity, z.strictObject({ abs: decimalText, relPct: decimalText })),
      rangeMax: z.record(quantity, decimalText),
    }),
  ),
});

const finding = z.strictObject({
  readingId: id.nullable(),
  subject: words,
  verdict: z.enum(VERDICTS),
  proof: z.strictObject({ proven: z.boolean(), because: z.array(key) }),
  blocks: z.array(z.enum(BLOCKS)),
  basis: z.strictObject({
    /** As it was applied, in the quantity's own unit. */
    limit: z
      .strictObject({
        quantity,
        point: key.nullable(),
        min: number,
        max: number,
        severity: z.enum(['outside', 'stop']),
      })
      .nullable(),
    from: z.enum(['sheet', 'ceiling', 'physics', 'practice', 'none']),
    source: basis.nullable(),
    sheet: z.strictObject({ sheetId: key, revision: key }).nullable(),
    formula: words.nullable(),
    inputs: z.record(key, words),
    /** What the formula gave, when the judged number was worked out. */
    result: z.strictObject({ value: decimalText, unit: words, plusMinus: number }).nullable(),
  }),
  missing: z.array(words),
  makeSafe: z.array(words),
  /** Everybody out before anything else. */
  leaveFirst: z.boolean(),
  /** Suggestions that were open at sealing and were not taken. */
  suggestions: z.array(key),
});

/** A number worked out from readings, with how. */
const computed = z.strictObject({
  key,
  label: words,
  point: key.nullable(),
  /** null: it can't be worked out; `missing` says why. */
  value: number,
  unit: words,
  /** Decimals that mean something, for printing. */
  decimals: decimalText,
  /** Half the width of the interval that the timing or the instruments leave. */
  plusMinus: number,
  formula: words,
  inputs: z.record(key, words),
  source: words.nullable(),
  missing: z.array(words),
});

const body = {
  language,
  unitSystem,
  company: z.strictObject({
    name: words,
    licenceNumber: words.nullable(),
    jurisdiction: words,
    timeZone: words,
    region: words.nullable(),
    country: words,
    street: personal,
    postcode: personal,
    city: personal,
    phone: personal,
    email: personal,
  }),
  job: z.strictObject({ jobId: id, kind: jobKind }),
  visit: z.strictObject({
    visitId: id,
    /** The day at the site. */
    on: day,
    startedAt: instant.nullable(),
    finishedAt: instant.nullable(),
    outcome: visitOutcome.nullable(),
    labourMin: number,
  }),
  people: z.array(person),
  parties: z.array(party),
  site,
  gasSupply: gasSupply.nullable(),
  appliance,
  permits: z.array(
    z.strictObject({
      number: words,
      issuer: words,
      state: z.enum(['applied', 'issued', 'inspected', 'closed', 'refused']),
      on: day.nullable(),
    }),
  ),
  sheet,
  run,
  findings: z.array(finding),
  computed: z.array(computed),
};

const amendment = z.strictObject({
  /** Where in the record, as a JSON pointer (RFC 6901); null: something the record has no place for. */
  path: z.string().startsWith('/').max(600).nullable(),
  /** What it is about, in words. */
  what: words,
  was: personal,
  isNow: commitment,
  because: commitment,
  /** What the new number or answer puts outside its limit or at a stop. Amendments sealed before they were judged lack it. */
  judged: z.array(z.strictObject({ subject: words, verdict: z.enum(VERDICTS) })).optional(),
  byId: id,
  byName: commitment,
  at: instant,
});

export const sealedRecord = z.strictObject({
  schema: z.literal(RECORD_SCHEMA),
  seal: z.strictObject({
    /** 1 for the first entry of the visit's chain. */
    sequence: decimalText,
    kind: z.enum(['sealed', 'amendment']),
    /** Of the entry before in the chain; null for the first. */
    previousSha256: sha256.nullable(),
    /** What an amendment corrects; the corrected record stays in the chain. */
    amends: z.strictObject({ sha256, reason: commitment }).nullable(),
    /** All amendments up to this entry, oldest first. What they correct stands below as it was sealed. Absent before there were any. */
    amendments: z.array(amendment).optional(),
    sealedAt: instant,
    sealedById: id,
  }),
  ...body,
});
export type SealedRecord = z.output<typeof sealedRecord>;

export const draftRecord = z.strictObject({ schema: z.literal(DRAFT_SCHEMA), ...body });
export type DraftRecord = z.output<typeof draftRecord>;

export type AnyRecord = SealedRecord | DraftRecord;

export function isSealed(record: AnyRecord): record is SealedRecord {
  return record.schema === RECORD_SCHEMA;
}
