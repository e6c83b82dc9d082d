/**
 * What has moved since earlier visits, and what that points to. Found on arrival is held against how the boiler was left;
 * what the work has put right by now is not held against it. A change is a matter for a look, never beyond a limit of the
 * maker; only what must be stopped and put right keeps the visit open.
 */
import type { Block } from '../../procedure/modelSheet.ts';
import type { QuantityKey } from '../../quantity/quantities.ts';
import { type Comparison, compareVisits, type TrendRow } from '../../trend/compareVisits.ts';
import { readingsToCompare } from '../../trend/readingsToCompare.ts';
import { type SeenSymptom, seenSymptoms } from '../../trend/seenSymptoms.ts';
import { TREND_LABELS, type TrendQuantity } from '../../trend/symptoms.ts';
import { trendKey } from '../../trend/trendValues.ts';
import { buildFinding } from '../buildFinding.ts';
import type { Finding } from '../finding.ts';
import type { RunContext } from '../runContext.ts';

/** The quantities its findings name among their inputs. */
export const DRIFT_FROM: readonly QuantityKey[] = [
  'o2DryVolPct',
  'co2DryVolPct',
  'coPpm',
  'flueGasC',
  'returnC',
  'supplyC',
  'systemPressureBarG',
  'inletPressureMbarG',
  'waterPh',
  'conductivityUsPerCm',
  'hardnessMmolPerL',
  'glycolPct',
  'condensateOutletPh',
  'hotWaterFlowLPerMin',
  'hotOutletC',
  'coldInletC',
  'systemFlowLPerMin',
  'meterTurns',
  'meterDialM3',
  'meterSeconds',
  'heatingValueMjPerM3',
];

export function driftSinceVisits(context: RunContext): readonly Finding[] {
  const { past, record } = context;
  // A startup is where comparing begins.
  if (past.length === 0 || record.kind === 'startup') return [];
  const firingPoints = [...context.firingPoints];
  const readings = readingsToCompare(record);
  const common = { past, fuel: record.fuel, readings, firingPoints };
  const found = compareVisits({ ...common, state: 'found' });
  const left = compareVisits({ ...common, state: 'left' });
  // What still shows after the work stands as it is left; what the work has taken away stands as it was found.
  const symptoms = new Map(
    [...seenSymptoms(found, firingPoints), ...seenSymptoms(left, firingPoints)].map((one) => [symptomKey(one), one]),
  );
  const told = new Set([...symptoms.values()].flatMap(({ rows }) => rows.map(({ row }) => trendKey(row))));
  return [
    ...[...symptoms.values()].map(symptomFinding),
    ...found.filter((row) => LOOKED_AT.has(row.trend) && !told.has(trendKey(row))).flatMap(driftFinding),
    ...firingPoints.flatMap((point) => notComparable(point, found)),
  ];
}

/** What a yearly service looks at by itself: the others speak only together. */
const LOOKED_AT: ReadonlySet<TrendQuantity> = new Set([
  'o2',
  'co2',
  'co',
  'flue-over-return',
  'dynamic-inlet-pressure',
  'all-on-inlet-pressure',
]);

function symptomKey({ symptom, point }: SeenSymptom): string {
  return `${symptom.key}${point === null ? '' : `@${point}`}`;
}

function symptomFinding(seen: SeenSymptom): Finding {
  const { symptom, rows } = seen;
  const blocks: readonly Block[] = symptom.mustStop === true ? ['leaving'] : [];
  return buildFinding({
    subject: `symptom:${symptomKey(seen)}`,
    verdict: 'outside',
    blocks,
    basis: {
      from: 'practice',
      source: {
        kind: 'common-practice',
        source: `may mean ${symptom.suspects.join(', ')}; check: ${symptom.nextChecks.join(', ')}`,
      },
      formula: sinceWords(rows.map(({ comparison }) => comparison)),
      inputs: Object.assign({}, ...rows.map(({ row, comparison }) => inputsOfRow(row, comparison))),
    },
  });
}

function driftFinding(row: TrendRow): readonly Finding[] {
  const comparison = [row.last, row.baseline].find((one) => one?.movement === 'up' || one?.movement === 'down');
  if (comparison === undefined || comparison === null) return [];
  return [
    buildFinding({
      subject: `drift:${trendKey(row)}`,
      verdict: 'outside',
      basis: {
        from: 'practice',
        source: { kind: 'common-practice', source: `more than a yearly service passes over: look for the cause` },
        formula: sinceWords([comparison]),
        inputs: inputsOfRow(row, comparison),
      },
    }),
  ];
}

/** Flue and water temperatures taken at another return: told once for the firing point. */
function notComparable(point: string, rows: readonly TrendRow[]): readonly Finding[] {
  const row = rows.find((one) => one.point === point && one.trend === 'flue-temperature');
  const comparison = row?.last ?? row?.baseline ?? null;
  if (row === undefined || comparison === null || comparison.obstacles.length === 0) return [];
  return [
    buildFinding({
      subject: `drift:temperatures@${point}`,
      verdict: 'cannot-judge',
      basis: { from: 'practice', formula: sinceWords([comparison]), inputs: inputsOfRow(row, comparison) },
      missing: [
        comparison.obstacles.includes('return-not-read')
          ? 'the return temperature, now and then'
          : 'a return within 3 K of the earlier one',
      ],
    }),
  ];
}

function sinceWords(comparisons: readonly Comparison[]): string {
  const [first] = comparisons;
  if (first === undefined) return 'since the earlier visit';
  const { kind, on } = first.earlier;
  const caveats = new Set(comparisons.flatMap((one) => one.caveats));
  const but = [
    caveats.has('other-instrument') ? 'another instrument' : '',
    caveats.has('other-return-temperature') ? 'another return temperature' : '',
  ].filter((one) => one !== '');
  return `now against the ${kind} of ${on}${but.length === 0 ? '' : ` (${but.join(', ')})`}`;
}

/** Both numbers, and which readings of this visit they rest on. */
function inputsOfRow(row: TrendRow, comparison: Comparison): Readonly<Record<string, number | string>> {
  const name = `${TREND_LABELS[row.trend]}${row.point === null ? '' : `@${row.point}`}`;
  return {
    [`${name}, then`]: shown(comparison.earlier.value.value, comparison.earlier.value.comparator),
    [`${name}, now`]: shown(row.now.value, row.now.comparator),
    ...Object.fromEntries(
      row.now.readings.map((one) => [
        `${one.quantity}${one.point === null ? '' : `@${one.point}`}.reading`,
        one.readingId,
      ]),
    ),
  };
}

function shown(value: number, comparator: '=' | '>' | '<'): number | string {
  return comparator === '=' ? value : `${comparator}${value}`;
}
