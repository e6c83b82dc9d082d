/**
 * The model sheet: what a maker demands of one model, as data. Limits, procedure, waits, emitter temperatures, altitude
 * rule, cover and registration window all come from here; no code names a sheet. A visit keeps the revision it ran with.
 */
import { z } from 'zod';
import { QUANTITY_KEYS } from '../quantity/quantities.ts';

export const SHEET_SCHEMA = 'lightoff.model-sheet/1';

const key = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'lower-case words joined by hyphens');
const text = z.string().trim().min(1).max(600);
const isoDay = z.iso.date();
const quantity = z.enum(QUANTITY_KEYS as [(typeof QUANTITY_KEYS)[number], ...(typeof QUANTITY_KEYS)[number][]]);

export const FUELS = ['natural-gas', 'propane', 'butane', 'heating-oil'] as const;
export const fuel = z.enum(FUELS);
export type FuelKey = z.infer<typeof fuel>;

/** What an open or bad item stands in the way of. Firing: lighting the burner. Leaving: finishing the visit. */
export const BLOCKS = ['firing', 'leaving', 'registration'] as const;
export const block = z.enum(BLOCKS);
export type Block = z.infer<typeof block>;

export const EMITTERS = [
  'floor-slab',
  'floor-under-wood',
  'panel-radiators',
  'old-radiators',
  'fin-tube-baseboard',
  'fan-coil',
  'hot-water-cylinder',
] as const;
export const emitter = z.enum(EMITTERS);
export type EmitterKind = z.infer<typeof emitter>;

/** Where a demand comes from; printed beside every limit. */
export const basis = z.strictObject({
  kind: z.enum(['maker', 'standard', 'common-practice']),
  /** The page, clause or habit. */
  source: text,
});
export type Basis = z.infer<typeof basis>;

/** Allowed range of one quantity at one point. `stop` means make safe now; `edge` is how close counts as near the edge. */
const limit = z
  .strictObject({
    quantity,
    /** Firing point, or `static`, `dynamic`, `dynamic-all-on`, `cold`, `after-purge`, `hot`, `before`, `after`; null: wherever read. */
    point: key.nullable().default(null),
    /** null: every fuel. */
    fuel: fuel.nullable().default(null),
    min: z.number().optional(),
    max: z.number().optional(),
    edge: z.number().nonnegative().optional(),
    severity: z.enum(['outside', 'stop']).default('outside'),
    blocks: z.array(block).default(['leaving']),
    /** Outside may be left when the maker's advice is written down; a stop never. */
    mayStandWithAdvice: z.boolean().optional(),
    basis,
  })
  .refine((value) => value.min !== undefined || value.max !== undefined, 'a limit needs min, max or both')
  .refine(
    (value) => value.min === undefined || value.max === undefined || value.min <= value.max,
    'min is above max: swap them',
  );
export type SheetLimit = z.infer<typeof limit>;

/** A demand on the difference of one quantity between two points, `value(at) − value(to)`. */
const relation = z
  .strictObject({
    quantity,
    at: key,
    to: key,
    fuel: fuel.nullable().default(null),
    minDifference: z.number().optional(),
    maxDifference: z.number().optional(),
    blocks: z.array(block).default(['leaving']),
    basis,
  })
  .refine(
    (value) => value.minDifference !== undefined || value.maxDifference !== undefined,
    'a relation needs a bound',
  );
export type SheetRelation = z.infer<typeof relation>;

/** What an answer grows old with: asked again when a run is reopened after that many hours. */
export const LAPSES = ['tightness', 'roomCo', 'analyserZero', 'pressure'] as const;
const lapse = z.enum(LAPSES);
export type LapseKind = z.infer<typeof lapse>;

/** When the item is asked at all; every condition given must hold. What is unknown is asked. */
const onlyFor = z.strictObject({
  fuels: z.array(fuel).min(1).optional(),
  /** Any of these is on the site. */
  emitters: z.array(emitter).min(1).optional(),
  /** An earlier item of the same list was answered with one of these values. */
  answer: z.strictObject({ item: key, is: z.array(key).min(1) }).optional(),
  /** A part was changed on this run after which the sheet wants a new tuning run, or a new baseline. */
  changedPart: z.enum(['needs-tuning', 'new-baseline']).optional(),
  /** An earlier reading of the same thing in the same list, as it was found, was not within its limits: this is how it is left. */
  foundOutside: key.optional(),
});

const itemBase = {
  key,
  label: text,
  /** One short line under the label: how, or what to watch. */
  hint: text.optional(),
  blocks: z.array(block).default([]),
  /** May be answered "not possible, because …". */
  mayBeNotPossible: z.boolean().default(true),
  onlyFor: onlyFor.optional(),
  /** Absent: known from the quantity read. null: never. */
  lapses: lapse.nullable().optional(),
  /** Which demands of general practice this item meets; checked against a list of absentees. */
  meets: z.array(z.string()).default([]),
};

/** Yes, no or not applicable; `no` keeps what it blocks blocked. */
const confirmItem = z.strictObject({
  ...itemBase,
  kind: z.literal('confirm'),
  notApplicable: z.boolean().default(false),
});

/** An option `converted` says that the appliance was converted to the site's fuel; beside a plate for another fuel no other will do. */
const chooseItem = z.strictObject({
  ...itemBase,
  kind: z.literal('choose'),
  /** The options are fuels and are held against the fuel of this site. */
  identifies: z.enum(['plate-fuel', 'tag-fuel']).optional(),
  options: z
    .array(
      z.strictObject({
        value: key,
        label: text,
        /** `finding`: keeps the blocks open until explained. `stop`: make safe now. */
        outcome: z.enum(['fine', 'finding', 'stop']).default('fine'),
        /** With `stop`: everybody leaves the building before anything else is done or typed. */
        leaveFirst: z.boolean().optional(),
        /** The fault stays open: the visit may end as one to be come back to, never as finished. */
        staysOpen: z.boolean().optional(),
        /** Something was adjusted: what was read at the firing points before this answer is history, and is read again. */
        readAgain: z.boolean().optional(),
      }),
    )
    .min(2),
});

/** Free words or a moment: a fault code, a product, a time of day. */
const noteItem = z.strictObject({
  ...itemBase,
  kind: z.literal('note'),
  holds: z.enum(['text', 'time', 'date']),
  /** Typed from the plate and held against the job. */
  identifies: z.enum(['serial']).optional(),
});

const readItem = z.strictObject({
  ...itemBase,
  kind: z.literal('read'),
  quantity,
  point: key.nullable().default(null),
});

/** Several samples of several quantities at one firing point, until steady. */
const seriesItem = z.strictObject({
  ...itemBase,
  kind: z.literal('series'),
  firingPoint: key,
  quantities: z.array(quantity).min(1),
  optional: z.array(quantity).default([]),
  /** Read before any work, and not again after it. */
  isAsFound: z.boolean().optional(),
});

/** A timed wait. Only its start is stored; what is left is computed from the clock. */
const holdItem = z.strictObject({
  ...itemBase,
  kind: z.literal('hold'),
  seconds: z.number().int().min(1).max(86_400),
  basis,
});

/** The burner's own calibration; stages in order, as the sheet has them. */
const tuningItem = z.strictObject({
  ...itemBase,
  kind: z.literal('tuning'),
  stages: z.array(z.strictObject({ key, label: text })).min(1),
  /** Written down at each stage as the display shows it: fan speed, power, supply water. */
  stageReadings: z.array(z.strictObject({ quantity, isNeeded: z.boolean() })).optional(),
  postRunWaitS: z.number().int().min(0).max(7200),
  needsCasingClosed: z.boolean(),
  needsHeatLoadOpen: z.boolean(),
  basis,
});

/** Which of the sheet's parts were changed on this run, each with its number; none is an answer too. */
const partsItem = z.strictObject({ ...itemBase, kind: z.literal('parts') });

/** Lockouts since the last visit, each with when it was and how cold it was outside; none is an answer too. */
const lockoutsItem = z.strictObject({ ...itemBase, kind: z.literal('lockouts') });

const photoItem = z.strictObject({ ...itemBase, kind: z.literal('photo') });

/** A proof that somebody other than the one who did the work must give. */
const witnessItem = z.strictObject({
  ...itemBase,
  kind: z.literal('witness'),
  by: z.enum(['licensed', 'occupant', 'anyone']),
});

const signOffItem = z.strictObject({ ...itemBase, kind: z.literal('sign-off'), by: z.enum(['licensed', 'occupant']) });

export const stepItem = z.discriminatedUnion('kind', [
  confirmItem,
  chooseItem,
  noteItem,
  readItem,
  seriesItem,
  holdItem,
  tuningItem,
  partsItem,
  lockoutsItem,
  photoItem,
  witnessItem,
  signOffItem,
]);
export type StepItem = z.infer<typeof stepItem>;
export type ItemKind = StepItem['kind'];
export type ItemOf<K extends ItemKind> = Extract<StepItem, { kind: K }>;

const step = z.strictObject({
  key,
  title: text,
  /** Who may do it. `licensed`: the operation refuses anybody without a licence valid on the visit's day. */
  who: z.enum(['dispatcher', 'anyone', 'licensed']),
  /** Everything of this kind must be closed before the step opens: the hold point. */
  needsClear: z.enum(['firing', 'leaving']).nullable().default(null),
  /** Steps that must be complete first. */
  after: z.array(key).default([]),
  caution: text.optional(),
  items: z.array(stepItem).min(1),
});
export type SheetStep = z.infer<typeof step>;

/** A part that can be changed, and what the maker wants done after it. */
const part = z.strictObject({
  key,
  label: text,
  /** A new tuning run before the appliance is left. */
  needsTuning: z.boolean(),
  /** What was read before the change says nothing about what is read after it. */
  newBaseline: z.boolean(),
  basis,
});
export type SheetPart = z.infer<typeof part>;

const altitudeRule = z.discriminatedUnion('method', [
  z.strictObject({ method: z.literal('not-on-sheet') }),
  z.strictObject({ method: z.literal('no-derate'), basis }),
  z.strictObject({
    method: z.literal('per-1000-ft'),
    pct: z.number().positive().max(10),
    fromFt: z.number().min(0).max(15_000),
    /** Above `fromFt`, are the feet counted from sea level or from `fromFt`? Readings of the same rule differ. */
    countedFrom: z.enum(['sea-level', 'threshold']),
    basis,
  }),
  z.strictObject({
    method: z.literal('bands'),
    bands: z.array(z.strictObject({ fromFt: z.number(), toFt: z.number(), pct: z.number().min(0).max(60) })).min(1),
    basis,
  }),
]);

/** The dates cover can count from, kept apart on the appliance. */
export const COVER_DATES = ['made', 'sold', 'installed', 'started', 'occupied', 'title-transfer'] as const;
export const coverDate = z.enum(COVER_DATES);
export type CoverDate = z.infer<typeof coverDate>;

/** What the maker demands of whoever does the startup; what is left out is preferred, and keeps nobody from it. */
const startupBy = z.strictObject({
  /** A course on this line, in date on the day. */
  training: basis.optional(),
  /** Everything the steps are measured with is in calibration on the day. */
  instruments: basis.optional(),
});

const cover = z.strictObject({
  terms: z.array(
    z.strictObject({
      part: z.enum(['exchanger', 'parts', 'labour']),
      registeredMonths: z.number().int().min(0).max(600),
      unregisteredMonths: z.number().int().min(0).max(600),
      countedFrom: coverDate,
      /** Where the appliance is used otherwise than the conditions say: this long instead. Absent: nothing is stated. */
      otherUseMonths: z.number().int().min(0).max(600).optional(),
    }),
  ),
  registration: z.strictObject({
    window: z
      .strictObject({ days: z.number().int().positive() })
      .or(z.strictObject({ months: z.number().int().positive() })),
    /** `earliest`: of all known dates except made. */
    countedFrom: z.union([coverDate, z.literal('earliest')]),
    basis,
  }),
  conditions: z.strictObject({
    serviceEveryMonths: z.number().int().positive().max(60),
    graceMonths: z.number().int().min(0).max(12),
    serviceCountedFrom: z.enum(['anniversary', 'last-service']),
    /** Absent: the startup. */
    serviceAnchor: coverDate.optional(),
    /** false: a service more than the grace before its due day does not count for it. Absent: it does. */
    earlyServiceCounts: z.boolean().optional(),
    waterQualityRecorded: z.boolean(),
    licensedInstaller: z.boolean(),
    originalOwner: z.boolean(),
    use: z.enum(['home', 'commercial', 'any']),
    transferWindowDays: z.number().int().positive().nullable(),
  }),
});
export type SheetCover = z.infer<typeof cover>;

export const modelSheet = z.strictObject({
  schema: z.literal(SHEET_SCHEMA),
  sheetId: key,
  revision: z.string().regex(/^\d{4}-\d{2}(\.\d+)?$/, 'year-month, then .n for a second one that month: 2026-03.2'),
  issuedOn: isoDay,
  title: text,
  /** null: general practice, used when the maker's own sheet is missing. */
  maker: text.nullable(),
  models: z.array(text),
  appliance: z.strictObject({
    /** `any`: a sheet for more than one kind of boiler. */
    hotWater: z.enum(['none', 'combi', 'cylinder', 'any']),
    burner: z.enum(['adaptive', 'fixed-ratio', 'any']),
    exchanger: z.enum(['stainless', 'aluminium', 'cast-iron', 'other']),
    ratedInputMaxKw: z.number().positive().nullable(),
    ratedInputMinKw: z.number().positive().nullable(),
    /** US plates are gross, most European ones net. */
    ratedInputBasis: z.enum(['gross', 'net']),
    ventMaxC: z.number().positive().nullable(),
    /** A regular expression for serial numbers of this maker. */
    serialPattern: z.string().max(200).nullable(),
  }),
  fuels: z.array(z.strictObject({ fuel, conversion: text.nullable().default(null) })).min(1),
  firingPoints: z.array(z.strictObject({ key, label: text, settleS: z.number().int().min(0).max(3600) })).min(1),
  /** When two readings count as the same, so that the point is steady. */
  steady: z.strictObject({
    minSamples: z.number().int().min(1).max(10),
    apartS: z.number().int().min(0).max(3600),
    o2Points: z.number().positive(),
    coPpm: z.number().positive(),
    coPct: z.number().positive(),
    flueK: z.number().positive(),
    basis,
  }),
  limits: z.array(limit),
  relations: z.array(relation).default([]),
  /** Clocked input against the site rating. */
  inputTolerancePct: z.number().positive().max(25),
  altitude: altitudeRule,
  supplyByEmitter: z.array(
    z.strictObject({
      emitter,
      minSupplyC: z.number(),
      maxSupplyC: z.number(),
      deltaTMinK: z.number(),
      deltaTMaxK: z.number(),
      note: text.optional(),
      basis,
    }),
  ),
  /** Settings as the boiler leaves the works: left unchanged needs a reason. */
  factoryDefaults: z.array(z.strictObject({ quantity, value: z.number() })).default([]),
  /** Hours after which an answer must be given again when a run is reopened. */
  lapseHours: z.strictObject({
    tightness: z.number().positive(),
    roomCo: z.number().positive(),
    analyserZero: z.number().positive(),
    pressure: z.number().positive(),
  }),
  /** Absent: the sheet says nothing of it. */
  startupBy: startupBy.optional(),
  startup: z.array(step).min(1),
  service: z.array(step).default([]),
  /** Absent: a repair walks the service. */
  repair: z.array(step).optional(),
  /** Absent: no part is said to want anything. */
  parts: z.array(part).optional(),
  cover: cover.nullable(),
});
export type ModelSheet = z.infer<typeof modelSheet>;
