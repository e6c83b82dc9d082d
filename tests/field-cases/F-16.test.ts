/**
 * Field case F-16, "the sheet was filled in, the work was not done": hundreds of new homes were commissioned on paper:
 * the same readings everywhere, equal to the target, a few minutes apart, without photos, flues in voids without a
 * hatch.
 */
import { describe, expect, it } from 'vitest';
import { oddRecords } from '../../domain/judgement/audit/oddRecords.ts';
import { visitTimesProblems } from '../../domain/judgement/audit/visitTimes.ts';
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import { copiedReadings } from '../../domain/judgement/mistakes/copiedReadings.ts';
import { findingOn } from '../support/findings.ts';
import { judgementSheet } from '../support/judgementSheet.ts';
import { at, cleanRecord, reading, withReadings, withValue } from '../support/recordBuilder.ts';

const jobs = Array.from({ length: 12 }, (_, index) => ({
  jobId: `unit-${index + 1}`,
  values: { 'co2DryVolPct@high': 9.2, 'coPpm@high': 18, 'o2DryVolPct@high': 4.7, 'flueGasC@high': 58 },
}));

describe('F-16: the sheet was filled in, the work was not done', () => {
  it('shows identical readings across units and readings equal to the target', () => {
    const problems = copiedReadings(jobs, { 'co2DryVolPct@high': 9.2, 'coPpm@high': 18 });
    expect(problems.filter(({ how }) => how === 'same-as-another-job')).toHaveLength((12 * 11) / 2);
    expect(problems.filter(({ how }) => how === 'no-spread')).toHaveLength(4);
    expect(problems.filter(({ how }) => how === 'exactly-on-target')).toHaveLength(12);
  });

  it('shows a visit shorter than its own waits, and readings before the burner was there', () => {
    const [hold] = cleanRecord().holds;
    const record = {
      ...cleanRecord(),
      startedAt: at(70),
      readings: cleanRecord().readings.map((one, index) => ({ ...one, measuredAt: at(70 + (index % 9)) })),
      holds: hold ? [{ ...hold, requiredS: 900 }] : [],
      firingPoints: [{ firingPoint: 'high', reachedAt: at(77) }],
    };
    expect(visitTimesProblems(record).map(({ code }) => code)).toEqual(
      expect.arrayContaining(['shorter-than-its-waits', 'out-of-order']),
    );
    expect(visitTimesProblems(cleanRecord())).toEqual([]);
  });

  it('shows photos from another day', () => {
    const photo = { itemKey: 'plate', attachmentId: 'photo-1', sha256: 'x', takenAt: at(-3 * 24 * 60) };
    expect(visitTimesProblems({ ...cleanRecord(), photos: [photo] })).toEqual([
      { code: 'photo-from-another-time', attachmentId: 'photo-1', takenAt: photo.takenAt },
    ]);
  });

  it('keeps firing shut while a flue in a void has no hatch counted', () => {
    const sheet = judgementSheet({
      limits: [
        {
          quantity: 'inspectionHatches',
          min: 1,
          blocks: ['firing'],
          basis: { kind: 'maker', source: 'flue in a void' },
        },
      ],
    });
    const none = reading({
      quantity: 'inspectionHatches',
      value: 0,
      itemKey: 'hatches',
      stepKey: 'before-firing',
      minutes: 9,
    });
    expect(
      findingOn(judgeRun({ record: withReadings(cleanRecord(), none), sheet }), 'limit:inspectionHatches'),
    ).toMatchObject({
      verdict: 'outside',
      blocks: ['firing'],
    });
  });

  it('gathers one technician’s units into one thing for the owner to look at', () => {
    const sheet = judgementSheet();
    const runs = Array.from({ length: 12 }, (_, index) => ({
      runId: `unit-${index + 1}`,
      record: cleanRecord(),
      sheet,
      isOver: true,
    }));
    const odd = oddRecords(runs);
    const alike = odd.filter(({ problem }) => problem.code === 'alike');
    expect(alike).toHaveLength(1);
    expect(alike[0]).toMatchObject({ staffId: 'staff-1', runIds: runs.map(({ runId }) => runId) });
    expect(odd.filter(({ problem }) => problem.code === 'no-spread').length).toBeGreaterThanOrEqual(4);
  });

  it('asks about readings exactly in the middle of the sheet’s bands, and about photos that are missing', () => {
    const middle = (['o2DryVolPct', 'co2DryVolPct'] as const).reduce(
      (record, quantity) => withValue(record, quantity, 'high', quantity === 'o2DryVolPct' ? 4.95 : 9.1),
      cleanRecord(),
    );
    const sheet = judgementSheet({
      limits: [
        { quantity: 'o2DryVolPct', point: 'high', min: 3.9, max: 6, basis: { kind: 'maker', source: 'table' } },
        { quantity: 'co2DryVolPct', point: 'high', min: 8.5, max: 9.7, basis: { kind: 'maker', source: 'table' } },
      ],
    });
    const problemsOf = (isOver: boolean) =>
      oddRecords([{ runId: 'unit-1', record: { ...middle, photos: [] }, sheet, isOver }]).map(({ problem }) => problem);
    expect(problemsOf(false)).toEqual([{ code: 'on-target', same: 2 }]);
    const withPhotos = judgementSheet({ startup: [step(sheet.startup[0]), ...sheet.startup.slice(1)] });
    expect(
      oddRecords([{ runId: 'unit-1', record: { ...cleanRecord(), photos: [] }, sheet: withPhotos, isOver: true }]).map(
        ({ problem }) => problem,
      ),
    ).toContainEqual({ code: 'photos-missing', count: 1 });

    function step(first: (typeof sheet.startup)[number] | undefined) {
      return {
        ...first,
        items: [
          ...(first?.items ?? []),
          { key: 'plate-photo', label: 'Photo of the plate', kind: 'photo', blocks: ['registration'] },
        ],
      };
    }
  });
});
