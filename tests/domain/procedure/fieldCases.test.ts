/**
 * Things that really happened on startups, re-told without names; common knowledge of the trade. Each is run on a
 * startup that is complete but for what went wrong.
 */
import { describe, expect, it } from 'vitest';
import type { EmitterKind } from '../../../domain/procedure/modelSheet.ts';
import { runProgress } from '../../../domain/procedure/progress.ts';
import type { RunProgress } from '../../../domain/procedure/progressTypes.ts';
import type { RunRecord } from '../../../domain/procedure/runRecord.ts';
import { driveRun } from '../../support/driveRun.ts';
import { emptyRecord, withAnswer } from '../../support/runRecordBuilder.ts';
import { readShippedSheet } from '../../support/shippedSheets.ts';

const sheet = readShippedSheet('general-practice-natural-gas.json');
const whole = completeRun(['panel-radiators']);

function completeRun(emitters: readonly EmitterKind[]) {
  const start = emptyRecord('natural-gas');
  return driveRun(sheet, 'startup', { ...start, site: { ...start.site, emitters } });
}

function without(record: RunRecord, ...itemKeys: readonly string[]): RunRecord {
  const keep = (one: { readonly itemKey: string }) => !itemKeys.includes(one.itemKey);
  return {
    ...record,
    answers: record.answers.filter(keep),
    readings: record.readings.filter(keep),
    photos: record.photos.filter(keep),
    holds: record.holds.filter(keep),
    tunings: record.tunings.filter(keep),
    signOffs: record.signOffs.filter(keep),
  };
}

function progressOf(record: RunRecord): RunProgress {
  return runProgress({ sheet, steps: 'startup', record, findings: [], now: whole.now });
}

const blockersOf = (record: RunRecord, gate: 'firing' | 'leaving' | 'registration') =>
  progressOf(record).gates[gate].map((blocker) => blocker.itemKey);

describe('field cases', () => {
  it('a complete startup is the start of each', () => {
    expect(whole.progress.gates).toEqual({ firing: [], leaving: [], registration: [] });
  });

  it('F-03: the vent joint at the boiler was never photographed: not lit', () => {
    const record = without(whole.record, 'vent-joint-photo', 'light-off');
    expect(blockersOf(record, 'firing')).toEqual(['vent-joint-photo']);
    const firstFire = progressOf(record).steps.find((step) => step.stepKey === 'first-fire');
    expect(firstFire?.state).toBe('locked');
  });

  it('F-03: a rough first start keeps the visit open until its cause and clean starts are written down', () => {
    const rough = withAnswer(without(whole.record, 'clean-starts'), 'light-off', 'rough-then-smooth', whole.now);
    expect(blockersOf(rough, 'leaving')).toEqual(['light-off', 'clean-starts']);
    const explained = withAnswer(whole.record, 'light-off', 'rough-then-smooth', whole.now, { reason: 'air in line' });
    expect(blockersOf(explained, 'leaving')).toEqual([]);
  });

  it('F-05: pressure not read again, demand only from service mode, vents not photographed: not left', () => {
    const record = withAnswer(without(whole.record, 'hot-pressure', 'vent-photos'), 'real-call', 'no', whole.now);
    expect(blockersOf(record, 'leaving')).toEqual(['vent-photos', 'real-call', 'hot-pressure']);
  });

  it('F-12: settings as the works left them need a reason', () => {
    const kept = withAnswer(whole.record, 'settings-chosen', 'factory-kept', whole.now);
    expect(blockersOf(kept, 'leaving')).toEqual(['settings-chosen']);
  });

  it('F-15: a heated wooden floor brings its own questions, radiators do not', () => {
    const floor = completeRun(['floor-under-wood']);
    const floorItems = ['manifold-supply', 'floor-mixing', 'floor-high-limit', 'floor-surface', 'floor-ramp'];
    const asked = (progress: RunProgress) =>
      progress.steps
        .flatMap((step) => step.items.map((item) => item.itemKey))
        .filter((key) => [...floorItems, 'floor-humidity'].includes(key));
    expect(asked(floor.progress)).toEqual([...floorItems, 'floor-humidity']);
    expect(asked(whole.progress)).toEqual([]);
    expect(blockersOf(without(floor.record, 'floor-ramp', 'manifold-supply'), 'leaving')).toEqual([
      'manifold-supply',
      'floor-ramp',
    ]);
  });

  it('F-16: a vent in a void without a hatch is not lit; with hatches they are counted and photographed', () => {
    const hidden = withAnswer(whole.record, 'vent-hidden', 'no-hatch', whole.now);
    expect(blockersOf(hidden, 'firing')).toEqual(['vent-hidden']);
    const hatches = withAnswer(whole.record, 'vent-hidden', 'hatches', whole.now);
    expect(blockersOf(hatches, 'firing')).toEqual(['hatches', 'hatches-photo']);
  });

  it('F-18: serial and plate photo are taken before anybody leaves', () => {
    expect(blockersOf(without(whole.record, 'serial', 'plate-photo'), 'leaving')).toEqual(['plate-photo', 'serial']);
  });

  it('nobody at home: a reason stands in for the signature', () => {
    const absent = withAnswer(
      without(whole.record, 'occupant-signs', 'shown-back', 'told-danger', 'told-reset'),
      'occupant',
      'absent',
      whole.now,
    );
    expect(blockersOf(absent, 'leaving')).toEqual(['occupant']);
    const because = withAnswer(absent, 'occupant', 'absent', whole.now, { reason: 'papers to the site office' });
    expect(blockersOf(because, 'leaving')).toEqual([]);
  });

  it('a bang is a stop: everything is held until it is made safe', () => {
    const bang = withAnswer(whole.record, 'light-off', 'delayed-or-bang', whole.now, { reason: 'unknown' });
    for (const gate of ['firing', 'leaving', 'registration'] as const) {
      expect(blockersOf(bang, gate)).toEqual(['light-off']);
    }
  });
});
