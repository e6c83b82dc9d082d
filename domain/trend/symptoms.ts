/**
 * What a change between two visits points to, as data: first suspects and the next thing to check.
 *
 * Source   common practice, no source, unless the row says otherwise
 * Checked  tests/domain/trend/findSymptoms.test.ts
 */
export type TrendQuantity =
  | 'delta-t'
  | 'flow'
  | 'output'
  | 'flue-over-return'
  | 'flue-temperature'
  | 'dynamic-inlet-pressure'
  | 'all-on-inlet-pressure'
  | 'co2'
  | 'o2'
  | 'co'
  | 'hot-water-flow'
  | 'hot-water-rise'
  | 'cold-pressure'
  | 'hot-pressure'
  | 'pressure-rise'
  | 'relief-valve-wet'
  | 'make-up-never-needed'
  | 'ph'
  | 'conductivity'
  | 'hardness'
  | 'glycol-share'
  | 'neutraliser-outlet-ph'
  | 'condensate-volume'
  | 'return-temperature';

export const TREND_LABELS: Readonly<Record<TrendQuantity, string>> = {
  'delta-t': 'ΔT',
  flow: 'Flow',
  output: 'Output',
  'flue-over-return': 'Flue over return',
  'flue-temperature': 'Flue gas',
  'dynamic-inlet-pressure': 'Gas pressure, high fire',
  'all-on-inlet-pressure': 'Gas pressure, everything on',
  co2: 'CO₂',
  o2: 'O₂',
  co: 'CO',
  'hot-water-flow': 'Hot-water flow',
  'hot-water-rise': 'Hot-water rise',
  'cold-pressure': 'Pressure, cold',
  'hot-pressure': 'Pressure, hot',
  'pressure-rise': 'Pressure rise',
  'relief-valve-wet': 'Relief valve wet',
  'make-up-never-needed': 'Never topped up',
  ph: 'pH',
  conductivity: 'Conductivity',
  hardness: 'Hardness',
  'glycol-share': 'Glycol',
  'neutraliser-outlet-ph': 'pH after the neutraliser',
  'condensate-volume': 'Condensate',
  'return-temperature': 'Return water',
};

export function isTrendQuantity(text: string): text is TrendQuantity {
  return Object.hasOwn(TREND_LABELS, text);
}

export type TrendChange = { readonly quantity: TrendQuantity; readonly moved: 'up' | 'down' | 'same' };

export type Symptom = {
  readonly key: string;
  readonly label: string;
  /** Any one of these sets of changes, each set complete, is the symptom. */
  readonly whenAnyOf: readonly (readonly TrendChange[])[];
  readonly suspects: readonly string[];
  readonly nextChecks: readonly string[];
  readonly source?: string;
  /** Not a matter of the next service: stop and put right. */
  readonly mustStop?: true;
};

function up(quantity: TrendQuantity): TrendChange {
  return { quantity, moved: 'up' };
}
function down(quantity: TrendQuantity): TrendChange {
  return { quantity, moved: 'down' };
}
function same(quantity: TrendQuantity): TrendChange {
  return { quantity, moved: 'same' };
}

export const SYMPTOMS: readonly Symptom[] = [
  {
    key: 'delta-t-up-flow-down',
    label: 'ΔT up, flow down, same output',
    whenAnyOf: [[up('delta-t'), down('flow'), same('output')]],
    suspects: ['fouled exchanger or filter', 'scale', 'air', 'stuck valve', 'pump speed'],
    nextChecks: ['pressure drop over the filter', 'pump watts'],
  },
  {
    key: 'delta-t-up-flow-same',
    label: 'ΔT up, flow same',
    whenAnyOf: [[up('delta-t'), same('flow')]],
    suspects: ['gas rate up', 'load up'],
    nextChecks: ['meter the gas'],
  },
  {
    key: 'delta-t-down-flow-same',
    label: 'ΔT down, flow same',
    whenAnyOf: [[down('delta-t'), same('flow')]],
    suspects: ['gas rate down', 'derating on high flue temperature or a limit'],
    nextChecks: ['gas rate', 'fan'],
  },
  {
    key: 'delta-t-down-flow-up',
    label: 'ΔT down, flow up',
    whenAnyOf: [[down('delta-t'), up('flow')]],
    suspects: ['bypass open', 'valve stuck open', 'pump set up'],
    nextChecks: ['balancing'],
  },
  {
    key: 'flue-over-return-up',
    label: 'Flue temperature over return up, same CO₂',
    whenAnyOf: [[up('flue-over-return'), same('co2')]],
    suspects: ['fouled gas side', 'scale on the water side'],
    nextChecks: ['clean, then repeat the reading'],
    source:
      'published for non-condensing boilers: 100 °F more stack temperature is about 2.5 % less efficiency; clean at 75 °F more',
  },
  {
    key: 'leaner',
    label: 'CO₂ down or O₂ up',
    whenAnyOf: [[down('co2')], [up('o2')]],
    suspects: ['air leak', 'gas valve drift', 'flue leak', 'recirculation'],
    nextChecks: ['tune the combustion'],
  },
  {
    key: 'too-rich',
    label: 'CO up with CO₂ up',
    whenAnyOf: [[up('co'), up('co2')]],
    suspects: ['too rich', 'blocked intake'],
    nextChecks: ['stop and put right'],
    mustStop: true,
  },
  {
    key: 'hot-water-flow-down',
    label: 'Hot-water flow down, rise same',
    whenAnyOf: [[down('hot-water-flow'), same('hot-water-rise')]],
    suspects: ['plate scale', 'inlet filter', 'supply pressure'],
    nextChecks: ['flow at a bypassed outlet'],
  },
  {
    key: 'hot-water-rise-down',
    label: 'Hot-water rise down at the same flow',
    whenAnyOf: [[down('hot-water-rise'), same('hot-water-flow')]],
    suspects: ['plate scale', 'diverter leak', 'low gas rate'],
    nextChecks: ['primary ΔT', 'heating pipe warm during hot-water draw'],
  },
  {
    key: 'both-pressures-lower',
    label: 'Cold and hot pressure both lower, same rise',
    whenAnyOf: [[down('cold-pressure'), down('hot-pressure'), same('pressure-rise')]],
    suspects: ['slow leak', 'air vented since'],
    nextChecks: ['make-up log', 'relief outlet', 'litres lost from the water held by the vessel'],
  },
  {
    key: 'hot-pressure-higher',
    label: 'Cold pressure same, hot pressure higher',
    whenAnyOf: [[same('cold-pressure'), up('hot-pressure')]],
    suspects: ['pre-charge lost', 'vessel too small', 'volume added'],
    nextChecks: ['effective pre-charge from both pressures', 'vessel size'],
  },
  {
    key: 'relief-lifting',
    label: 'Cold pressure lower and rise larger, or relief valve wet',
    whenAnyOf: [[down('cold-pressure'), up('pressure-rise')], [up('relief-valve-wet')]],
    suspects: ['vessel failed', 'relief valve lifting at the peak: the loss shows cold'],
    nextChecks: ['hot pressure the vessel should give', 'dampness at the relief outlet'],
    source: 'dampness at the relief outlet: trade article',
  },
  {
    key: 'mains-coming-in',
    label: 'Cold pressure higher, never dropping',
    whenAnyOf: [[up('cold-pressure'), up('make-up-never-needed')]],
    suspects: ['fill valve leaking mains in', 'plate heat exchanger leaking mains in'],
    nextChecks: ['close the fill, watch for 24 h'],
  },
  {
    key: 'ph-down',
    label: 'pH down',
    whenAnyOf: [[down('ph')]],
    suspects: ['oxygen', 'make-up', 'glycol ageing'],
    nextChecks: ['inhibitor', 'conductivity'],
  },
  {
    key: 'conductivity-up',
    label: 'Conductivity up',
    whenAnyOf: [[up('conductivity')]],
    suspects: ['make-up', 'inhibitor', 'glycol breakdown'],
    nextChecks: ['hardness'],
  },
  {
    key: 'hardness-up',
    label: 'Hardness up',
    whenAnyOf: [[up('hardness')]],
    suspects: ['untreated top-up'],
    nextChecks: ['water meter'],
  },
  {
    key: 'glycol-diluted',
    label: 'Glycol share down, pressure kept',
    whenAnyOf: [[down('glycol-share'), same('cold-pressure')]],
    suspects: ['topped up with water'],
    nextChecks: ['refractometer'],
  },
  {
    key: 'neutraliser-spent',
    label: 'Neutraliser outlet pH lower than last time, or under the local limit',
    whenAnyOf: [[down('neutraliser-outlet-ph')]],
    suspects: ['medium spent'],
    nextChecks: ['replace the medium'],
  },
  {
    key: 'less-condensate',
    label: 'Condensate volume down at the same return',
    whenAnyOf: [[down('condensate-volume'), same('return-temperature')]],
    suspects: ['return higher or more excess air than it seems', 'blocked drain'],
    nextChecks: ['return temperature', 'O₂'],
  },
];
