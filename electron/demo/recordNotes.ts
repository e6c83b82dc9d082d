/** Files one visit's notes as the rows its recording would have left, with times that pass as they do on site. */
import {
  attachmentLinks,
  firingPointMarks,
  readings,
  runAnswers,
  runHolds,
  runSteps,
  runs,
  runTunings,
  signOffs,
  tuningStages,
} from '../../db/schema/index.ts';
import type { SheetRevisionRow } from '../../db/sheets.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import type { EmitterKind, FuelKey, ModelSheet, SheetStep, StepItem } from '../../domain/procedure/modelSheet.ts';
import { NONE_ANSWER } from '../../domain/procedure/progress/listProgress.ts';
import { parseTyped } from '../../domain/quantity/parseTyped.ts';
import type { QuantityKey } from '../../domain/quantity/quantities.ts';
import { unwrap } from '../../domain/result.ts';
import type { RecordedRun } from './recordedRun.ts';
import { SECONDS_PER_ENTRY, SECONDS_PER_TUNING_STAGE, secondsToRead } from './siteTimes.ts';

export type NotesOfVisit = {
  readonly visitId: string;
  readonly jobId: string;
  readonly steps: 'startup' | 'service';
  readonly revision: SheetRevisionRow | undefined;
  readonly fuel: FuelKey;
  readonly notes: RecordedRun;
  readonly firstNotes: RecordedRun | null;
  readonly staffId: string;
  readonly instrumentOf: (quantity: QuantityKey) => string | null;
  readonly photoOf: (fileName: string) => string;
  readonly emitters: readonly EmitterKind[];
};

export function recordNotes(
  writer: StoreWriter,
  visit: NotesOfVisit,
): { readonly runId: string; readonly endedAt: string } {
  if (visit.revision === undefined) throw new Error(`no sheet for visit ${visit.visitId}`);
  const sheet = visit.revision.body as ModelSheet;
  const runId = writer.insert(runs, {
    jobId: visit.jobId,
    sheetRevisionId: visit.revision.id,
    fuel: visit.fuel,
    startedAt: visit.notes.startedAt,
  });
  const filing = new Filing(writer, visit, runId, sheet);
  const steps = sheet[visit.steps];
  for (const step of steps) filing.step(step);
  const last = steps.at(-1);
  if (last !== undefined) writer.update(runs, runId, { currentStepKey: last.key });
  return { runId, endedAt: filing.now() };
}

type Entry = { readonly text: string; readonly unit: string } | { readonly notMeasured: string };

class Filing {
  readonly #writer: StoreWriter;
  readonly #visit: NotesOfVisit;
  readonly #runId: string;
  readonly #sheet: ModelSheet;
  #ms: number;

  constructor(writer: StoreWriter, visit: NotesOfVisit, runId: string, sheet: ModelSheet) {
    this.#writer = writer;
    this.#visit = visit;
    this.#runId = runId;
    this.#sheet = sheet;
    this.#ms = Date.parse(visit.notes.startedAt);
  }

  now(): string {
    return new Date(this.#ms).toISOString();
  }

  step(step: SheetStep): void {
    const items = step.items.filter((item) => this.#isAsked(item));
    if (items.length === 0) return;
    this.#writer.insert(runSteps, {
      runId: this.#runId,
      stepKey: step.key,
      openedAt: this.now(),
      openedById: this.#visit.staffId,
    });
    for (const item of items) {
      this.#item(step, item);
      this.#pass(SECONDS_PER_ENTRY);
    }
  }

  #isAsked(item: StepItem): boolean {
    const { fuels, emitters, answer } = item.onlyFor ?? {};
    if (fuels !== undefined && !fuels.includes(this.#visit.fuel)) return false;
    if (emitters !== undefined && !emitters.some((emitter) => this.#visit.emitters.includes(emitter))) return false;
    if (item.onlyFor?.changedPart !== undefined) return false;
    if (item.onlyFor?.foundOutside !== undefined && this.#visit.notes.readings[item.key] === undefined) return false;
    return answer === undefined || answer.is.includes(String(this.#visit.notes.answers[answer.item]));
  }

  #item(step: SheetStep, item: StepItem): void {
    const { notes } = this.#visit;
    switch (item.kind) {
      case 'confirm':
      case 'choose':
      case 'note':
      case 'witness':
        this.#answer(step, item, notes.answers[item.key]);
        return;
      case 'parts':
      case 'lockouts':
        this.#answer(step, item, NONE_ANSWER);
        return;
      case 'read':
        this.#read(
          step,
          item,
          item.quantity,
          item.point,
          1,
          notes.readings[item.key],
          this.#visit.firstNotes?.readings[item.key],
        );
        return;
      case 'series':
        this.#series(step, item);
        return;
      case 'hold':
        this.#hold(item);
        return;
      case 'tuning':
        this.#tuning(item);
        return;
      case 'photo':
        this.#writer.insert(attachmentLinks, {
          attachmentId: this.#visit.photoOf(notes.photos[item.key] ?? notes.photos['default'] ?? ''),
          entity: 'runs',
          entityId: this.#runId,
          itemKey: item.key,
        });
        return;
      case 'sign-off':
        this.#writer.insert(signOffs, {
          runId: this.#runId,
          itemKey: item.key,
          by: item.by,
          name: notes.signOffs[item.key] ?? '',
          staffId: item.by === 'licensed' ? this.#visit.staffId : null,
          at: this.now(),
        });
        return;
    }
  }

  #answer(step: SheetStep, item: StepItem, answer: RecordedRun['answers'][string] | undefined): void {
    if (answer === undefined) return;
    const given =
      typeof answer === 'string' ? { value: answer, reason: null } : { value: null, reason: answer.notPossible };
    this.#writer.insert(runAnswers, { ...this.#at(step, item), ...given, byId: this.#visit.staffId, at: this.now() });
  }

  /** What was written first stays on file, replaced by what was read again ten minutes later. */
  #read(
    step: SheetStep,
    item: StepItem,
    quantity: QuantityKey,
    point: string | null,
    sample: number,
    entry: Entry | undefined,
    first: Entry | undefined,
  ): void {
    if (entry === undefined) return;
    if ('text' in entry) this.#pass(secondsToRead(quantity, entry.text));
    if (first === undefined || JSON.stringify(first) === JSON.stringify(entry)) {
      this.#reading(step, item, quantity, point, sample, entry, null);
      return;
    }
    const replacedId = this.#reading(step, item, quantity, point, sample, first, null);
    this.#pass(600);
    this.#reading(step, item, quantity, point, sample, entry, replacedId);
  }

  #reading(
    step: SheetStep,
    item: StepItem,
    quantity: QuantityKey,
    point: string | null,
    sample: number,
    entry: Entry,
    replacesId: string | null,
  ): string {
    const isMeasured = 'text' in entry;
    const typed = isMeasured ? unwrap(parseTyped(quantity, entry.text, entry.unit)) : null;
    const id = this.#writer.insert(readings, {
      ...this.#at(step, item),
      quantity,
      point,
      sample,
      typedText: isMeasured ? entry.text : '',
      typedUnit: typed?.unit ?? '',
      valueOwn: typed?.valueOwn ?? null,
      comparator: typed?.comparator ?? '=',
      notMeasuredReason: isMeasured ? null : entry.notMeasured,
      instrumentId: isMeasured ? this.#visit.instrumentOf(quantity) : null,
      measuredById: this.#visit.staffId,
      typedById: this.#visit.staffId,
      measuredAt: this.now(),
      typedAt: this.now(),
      origin: 'typed',
    });
    if (replacesId !== null) this.#writer.update(readings, replacesId, { supersededById: id });
    return id;
  }

  #series(step: SheetStep, item: Extract<StepItem, { kind: 'series' }>): void {
    const samples = this.#visit.notes.series[item.key];
    if (samples === undefined) return;
    const first = this.#visit.firstNotes?.series[item.key];
    this.#writer.insert(firingPointMarks, {
      runId: this.#runId,
      firingPoint: item.firingPoint,
      reachedAt: this.now(),
      byId: this.#visit.staffId,
    });
    this.#pass(this.#sheet.firingPoints.find((point) => point.key === item.firingPoint)?.settleS ?? 0);
    const count = Math.max(...Object.values(samples).map((list) => list.length));
    for (let sample = 1; sample <= count; sample += 1) {
      for (const [quantity, list] of Object.entries(samples)) {
        this.#read(
          step,
          item,
          quantity as QuantityKey,
          item.firingPoint,
          sample,
          list[sample - 1],
          first?.[quantity]?.[sample - 1],
        );
      }
      this.#pass(Math.max(this.#sheet.steady.apartS, 1));
    }
  }

  #hold(item: Extract<StepItem, { kind: 'hold' }>): void {
    const startedAt = this.now();
    this.#pass(item.seconds);
    this.#writer.insert(runHolds, {
      runId: this.#runId,
      itemKey: item.key,
      startedAt,
      requiredS: item.seconds,
      endedAt: this.now(),
      hasClockJumped: false,
      bootId: 'unknown',
      startedSteadyMs: 0,
      byId: this.#visit.staffId,
    });
  }

  #tuning(item: Extract<StepItem, { kind: 'tuning' }>): void {
    const startedAt = this.now();
    const tuningId = this.#writer.newId();
    const stages = item.stages.map((stage) => {
      this.#pass(SECONDS_PER_TUNING_STAGE);
      return { tuningId, stageKey: stage.key, reachedAt: this.now() };
    });
    this.#pass(SECONDS_PER_TUNING_STAGE);
    this.#writer.insert(runTunings, {
      id: tuningId,
      runId: this.#runId,
      itemKey: item.key,
      startedAt,
      finishedAt: this.now(),
      byId: this.#visit.staffId,
    });
    for (const stage of stages) this.#writer.insert(tuningStages, stage);
    this.#pass(item.postRunWaitS);
  }

  #at(step: SheetStep, item: StepItem) {
    return { runId: this.#runId, visitId: this.#visit.visitId, stepKey: step.key, itemKey: item.key };
  }

  #pass(seconds: number): void {
    this.#ms += seconds * 1000;
  }
}
