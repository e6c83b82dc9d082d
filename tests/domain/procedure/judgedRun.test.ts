/** Sheets, judgement and procedure together: a healthy installation passes whole, and a sick one does not. */
import { describe, expect, it } from 'vitest';
import { judgeRun } from '../../../domain/judgement/judgeRun.ts';
import type { FuelKey, ModelSheet } from '../../../domain/procedure/modelSheet.ts';
import { runProgress } from '../../../domain/procedure/progress.ts';
import type { RunProgress, StepList } from '../../../domain/procedure/progressTypes.ts';
import type { RunRecord } from '../../../domain/procedure/runRecord.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import { calibratedUntil } from '../../support/calibratedUntil.ts';
import { driveRun } from '../../support/driveRun.ts';
import { HEALTHY_INSTRUMENT, plausibleEntry } from '../../support/plausibleEntry.ts';
import { emptyRecord } from '../../support/runRecordBuilder.ts';
import { readShippedSheet, readShippedSheets } from '../../support/shippedSheets.ts';

const lists: readonly StepList[] = ['startup', 'service'];
const runs = readShippedSheets().flatMap((sheet) =>
  sheet.fuels.flatMap(({ fuel }) => lists.map((list) => ({ sheet, fuel, list, name: sheet.sheetId }))),
);
const SERIALS: Readonly<Record<string, string>> = {
  'quillstone-cinder-c': 'QS25K104233',
  'tarnhollow-foundry-h': '2532-TH-04711',
  'ebberlund-skerry-s': 'EBC25110042',
  'sorrelgate-pumice-lp': 'SG-2504419B',
};

type Sickness = (quantity: QuantityKey, point: string | null) => number | null;

/** Answered as it comes, and judged as often as asked: at every step, or once at the end. */
function judgedRun(
  sheet: ModelSheet,
  fuel: FuelKey,
  list: StepList,
  { sick = () => null, everyStep = false, dueOn = '2027-01-31' }: Partial<Options> = {},
): RunProgress {
  const start = emptyRecord(fuel);
  const ratedInputKw = 26;
  const healthy = plausibleEntry(sheet, fuel, ratedInputKw);
  const begun: RunRecord = {
    ...start,
    kind: list,
    site: { ...start.site, emitters: ['panel-radiators', 'hot-water-cylinder'] },
    appliance: {
      ...start.appliance,
      serial: SERIALS[sheet.sheetId] ?? 'AB1234567',
      ratedInputKw,
      ratedInputBasis: 'gross',
      hasConversionRecord: sheet.fuels[0]?.fuel !== fuel,
    },
    instruments: [{ ...HEALTHY_INSTRUMENT, calibrations: calibratedUntil(dueOn) }],
  };
  const style = {
    instrumentId: HEALTHY_INSTRUMENT.instrumentId,
    entryFor: (quantity: QuantityKey, point: string | null) => sick(quantity, point) ?? healthy(quantity, point),
  };
  const judge = (record: RunRecord) => judgeRun({ record, sheet });
  const { record, now, progress } = driveRun(
    sheet,
    list,
    begun,
    () => undefined,
    everyStep ? { style, judge } : { style },
  );
  return everyStep ? progress : runProgress({ sheet, steps: list, record, findings: judge(record), now });
}

type Options = { readonly sick: Sickness; readonly everyStep: boolean; readonly dueOn: string };

function blockers(progress: RunProgress): readonly string[] {
  const lines = (['firing', 'leaving', 'registration'] as const).flatMap((gate) =>
    progress.gates[gate].map((blocker) => {
      const why = blocker.because.map((one) =>
        one.code === 'finding'
          ? `${one.finding.subject} ${one.finding.verdict} ${JSON.stringify(one.finding.proof)}`
          : one.code,
      );
      return `${gate}: ${blocker.itemKey ?? 'the run'}: ${why.join(', ')}`;
    }),
  );
  return lines;
}

describe('a judged run', { timeout: 30_000 }, () => {
  it.each(runs)('$name: a healthy $list on $fuel passes', ({ sheet, fuel, list }) => {
    const progress = judgedRun(sheet, fuel, list);
    expect(blockers(progress)).toEqual([]);
    expect(progress.steps.filter((step) => step.state !== 'done').map((step) => step.stepKey)).toEqual([]);
  });

  const general = readShippedSheet('general-practice-natural-gas.json');
  const walked = (options: Partial<Options>) =>
    judgedRun(general, 'natural-gas', 'startup', { everyStep: true, ...options });
  const stateOf = (progress: RunProgress, stepKey: string) =>
    progress.steps.find((step) => step.stepKey === stepKey)?.state;
  const blocked = (progress: RunProgress, gate: 'firing' | 'leaving' | 'registration') =>
    progress.gates[gate].map((blocker) => blocker.itemKey);

  it('is never stopped on the way when all is well, judged at every step', () => {
    expect(blockers(walked({}))).toEqual([]);
  });

  it('CO in the room keeps the burner off before anything is lit', () => {
    const progress = walked({
      sick: (quantity, point) => (quantity === 'roomCoPpm' && point === 'before' ? 40 : null),
    });
    expect(blocked(progress, 'firing')).toContain('room-co');
    expect(stateOf(progress, 'first-fire')).toBe('locked');
  });

  it('a gas pressure under the sheet keeps the burner off', () => {
    const low: Sickness = (quantity, point) => (quantity === 'inletPressureMbarG' && point === 'static' ? 6 : null);
    const progress = walked({ sick: low });
    expect(blocked(progress, 'firing')).toContain('inlet-static');
    expect(stateOf(progress, 'first-fire')).toBe('locked');
  });

  it('CO in the flue over the stop turns the burner off again and holds everything', () => {
    const progress = walked({ sick: (quantity, point) => (quantity === 'coPpm' && point === 'high' ? 900 : null) });
    for (const gate of ['firing', 'leaving', 'registration'] as const) {
      expect(blocked(progress, gate)).toContain('high-flue');
    }
    expect(stateOf(progress, 'combustion-low')).toBe('locked');
    expect(stateOf(progress, 'sign-off')).toBe('locked');
  });

  it('CO2 outside common practice keeps the visit open, not the burner off', () => {
    const rich: Sickness = (quantity, point) => {
      if (point !== 'low') return null;
      return quantity === 'co2DryVolPct' ? 10.6 : quantity === 'o2DryVolPct' ? 2.2 : null;
    };
    const progress = walked({ sick: rich });
    expect(blocked(progress, 'firing')).toEqual([]);
    expect(blocked(progress, 'leaving')).toContain('low-flue');
    expect(stateOf(progress, 'sign-off')).toBe('locked');
  });

  it('an analyser out of date proves nothing: combustion stays open for leaving and registration', () => {
    const progress = judgedRun(general, 'natural-gas', 'startup', { dueOn: '2026-03-01' });
    expect(blocked(progress, 'leaving')).toEqual(expect.arrayContaining(['high-flue', 'low-flue']));
    expect(blocked(progress, 'registration')).toEqual(expect.arrayContaining(['high-flue', 'low-flue']));
  });
});
