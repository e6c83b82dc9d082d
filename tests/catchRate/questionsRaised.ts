/** Runs one entered set through everything that looks at entries: the boxes, the judgement of the run, the checks around it. */
import type { SuggestionCode } from '../../domain/judgement/finding.ts';
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import { clockDifferences } from '../../domain/judgement/mistakes/clockDifferences.ts';
import { copiedReadings } from '../../domain/judgement/mistakes/copiedReadings.ts';
import { dateQuestions } from '../../domain/judgement/mistakes/dateQuestions.ts';
import { feetAsMetres } from '../../domain/judgement/mistakes/feetAsMetres.ts';
import { ownerIsBuilder } from '../../domain/judgement/mistakes/ownerIsBuilder.ts';
import { readDayText } from '../../domain/judgement/mistakes/readDayText.ts';
import { serialElsewhere } from '../../domain/judgement/mistakes/serialElsewhere.ts';
import { similarParties } from '../../domain/judgement/mistakes/similarParties.ts';
import { COVER_DATES, type ModelSheet } from '../../domain/procedure/modelSheet.ts';
import type { RecordedReading, RunRecord } from '../../domain/procedure/runRecord.ts';
import { parseTyped } from '../../domain/quantity/parseTyped.ts';
import { calibratedUntil } from '../support/calibratedUntil.ts';
import { judgementSheet } from '../support/judgementSheet.ts';
import { ACCURACY } from './accuracyClasses.ts';
import { type EnteredSet, type Entry, VISIT_STARTED_AT } from './enteredSet.ts';

export type Question = {
  /** `refused`: the box did not take the text. */
  readonly code: SuggestionCode | 'refused' | 'odd-pair';
  readonly detail: string;
  /** Entries it is about; empty where it is about the run or what is around it. */
  readonly entryIds: readonly string[];
};

/** No limit of any sheet helps: what is caught is caught by the entries alone. */
const SHEET = judgementSheet({ limits: [], relations: [], factoryDefaults: [] });

export function questionsRaised(set: EnteredSet): readonly Question[] {
  return [...ofReadings(set), ...aroundTheRun(set)];
}

function ofReadings(set: EnteredSet): readonly Question[] {
  const questions: Question[] = [];
  const readings: RecordedReading[] = [];
  for (const entry of set.entries) {
    const parsed = parseTyped(entry.quantity, entry.text, entry.unit);
    if (parsed.ok) readings.push(readingOf(entry, parsed.value));
    else questions.push({ code: 'refused', detail: `${parsed.error.code} ${entry.quantity}`, entryIds: [entry.id] });
  }
  for (const finding of judgeRun({ record: recordOf(set, readings), sheet: sheetOf(set) })) {
    if (!/^(mistake|pair):/.test(finding.subject)) continue;
    const code =
      finding.suggestions[0]?.code ?? (finding.subject.startsWith('pair:') ? 'odd-pair' : codeOf(finding.subject));
    const entryIds = Object.values(finding.basis.inputs).filter((value) => typeof value === 'string');
    questions.push({ code, detail: finding.subject, entryIds });
  }
  return questions;
}

function codeOf(subject: string): SuggestionCode {
  return subject.replace(/^mistake:/, '').replace(/@.*$/, '') as SuggestionCode;
}

function aroundTheRun(set: EnteredSet): readonly Question[] {
  const { dates, today } = set;
  const codes: (SuggestionCode | null | undefined)[] = [];
  const own = { applianceId: 'own', siteId: 'site', maker: 'Invented Works', serial: set.serial };
  const known = set.otherSerials.map(({ serial, isOnSameSite }, index) => ({
    applianceId: `other-${index}`,
    siteId: isOnSameSite ? 'site' : `site-${index}`,
    maker: 'Invented Works',
    serial,
  }));
  codes.push(...serialElsewhere(own, known).map(({ code }) => code));
  const typedDay = readDayText(set.installedText);
  if (!typedDay.ok) codes.push('day-month-swapped');
  codes.push(
    ...dateQuestions({
      cover: null,
      dates: COVER_DATES.flatMap((kind) => {
        const on = kind === 'title-transfer' ? undefined : dates[kind];
        return on === undefined ? [] : [{ kind, on, precision: 'day' as const }];
      }),
      registeredOn: null,
      isNewBuild: set.isNewBuild,
      today,
    }).map(({ code }) => code),
  );
  const moment = Date.parse(VISIT_STARTED_AT);
  codes.push(
    ...clockDifferences([
      { clock: 'laptop', at: new Date(moment).toISOString() },
      { clock: 'camera', at: new Date(moment + set.cameraOffsetS * 1000).toISOString() },
    ]).map(({ code }) => code),
  );
  codes.push(feetAsMetres({ altitudeM: set.altitudeEnteredM, neighbourAltitudesM: set.neighbourAltitudesM })?.code);
  codes.push(similarParties(set.party, set.otherParty)?.code);
  codes.push(
    ownerIsBuilder({
      buildingType: set.isNewBuild ? 'new-build' : 'home',
      ownerId: set.ownerIsBuilder ? 'builder' : 'owner',
      builderId: 'builder',
      occupantId: null,
      titleTransferOn: null,
    })?.code,
  );
  const ownJob = Object.fromEntries(
    Object.keys(set.lastJob).map((key) => {
      const [quantity, point] = key.split('@');
      const last = set.entries.findLast((entry) => entry.quantity === quantity && entry.point === point);
      return [key, Number(last?.text.replace(',', '.') ?? Number.NaN)];
    }),
  );
  codes.push(
    ...copiedReadings([
      { jobId: 'before', values: set.lastJob },
      { jobId: 'this', values: ownJob },
    ]).map(({ code }) => code),
  );
  return codes.flatMap((code) => (code == null ? [] : [{ code, detail: code, entryIds: [] }]));
}

function sheetOf(set: EnteredSet): ModelSheet {
  return {
    ...SHEET,
    appliance: {
      ...SHEET.appliance,
      ratedInputMaxKw: set.sheetRatedKw,
      ventMaxC: set.site.ventMaxC,
      serialPattern: set.serialPattern,
    },
  };
}

function recordOf(set: EnteredSet, readings: readonly RecordedReading[]): RunRecord {
  const { site } = set;
  const ratedInputKw = readings.find(({ quantity }) => quantity === 'ratedInputKw')?.valueOwn ?? null;
  return {
    runId: 'run',
    kind: 'startup',
    fuel: site.fuel,
    startedAt: at(0),
    site: {
      altitudeM: set.altitudeEnteredM,
      systemHeightM: site.heightM,
      systemVolumeL: 120,
      emitters: [],
      fuel: site.fuel,
      gasSupplyKind: site.fuel === 'propane' ? 'tank' : 'meter',
      meterCompensation: set.meterCompensation,
      heatingValueMjPerM3: null,
      heatingValueSource: null,
      jurisdiction: site.place,
      timeZone: site.place === 'europe' ? 'Europe/Berlin' : 'America/Denver',
      coldWaterC: site.coldWaterC,
    },
    appliance: {
      serial: set.serial,
      maker: 'Invented Works',
      model: 'T',
      plateFuel: site.fuel,
      tagFuel: null,
      hasConversionRecord: false,
      ratedInputKw,
      ratedInputBasis: 'gross',
    },
    instruments: [
      {
        instrumentId: 'analyser',
        label: 'Analyser',
        serial: 'A',
        kind: 'analyser',
        calibrations: calibratedUntil(set.calibrationDueOn),
        accuracy: {
          o2DryVolPct: ACCURACY.o2VolPct,
          co2DryVolPct: ACCURACY.co2VolPct,
          coPpm: ACCURACY.coPpm,
          flueGasC: ACCURACY.flueGasC,
        },
        rangeMax: { coPpm: set.coRangeMaxPpm },
      },
      {
        instrumentId: 'manometer',
        label: 'Manometer',
        serial: 'M',
        kind: 'manometer',
        calibrations: calibratedUntil(set.calibrationDueOn),
        accuracy: { inletPressureMbarG: ACCURACY.gasPressureMbar },
        rangeMax: {},
      },
    ],
    answers: [
      { itemKey: 'water-side', stepKey: 'before-firing', value: 'yes', reason: null, byId: 'staff', at: at(880) },
    ],
    readings,
    holds: [],
    tunings: [
      {
        itemKey: 'tuning',
        startedAt: at(1800),
        stages: [],
        finishedAt: at(set.tuningFinishedAtS),
        interruptedAt: null,
        interruptedReason: null,
      },
    ],
    photos: [],
    firingPoints: [
      { firingPoint: 'high', reachedAt: at(set.highReachedAtS) },
      { firingPoint: 'low', reachedAt: at(set.lowReachedAtS) },
    ],
    signOffs: [],
    openMakeSafes: 0,
    openNotices: [],
  };
}

function readingOf(
  entry: Entry,
  parsed: { readonly unit: string; readonly valueOwn: number; readonly comparator: '=' | '>' | '<' },
): RecordedReading {
  return {
    readingId: entry.id,
    visitId: 'visit',
    stepKey: entry.stepKey,
    itemKey: entry.itemKey,
    quantity: entry.quantity,
    point: entry.point,
    sample: entry.sample,
    typedText: entry.text,
    typedUnit: parsed.unit,
    valueOwn: parsed.valueOwn,
    comparator: parsed.comparator,
    notMeasuredReason: null,
    instrumentId: entry.instrument,
    measuredById: 'staff',
    typedById: 'staff',
    measuredAt: at(entry.atS),
    supersededById: null,
    origin: 'typed',
  };
}

function at(seconds: number): string {
  return new Date(Date.parse(VISIT_STARTED_AT) + seconds * 1000).toISOString();
}
