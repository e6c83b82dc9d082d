/** A small model sheet for tests of the judgement: invented maker, natural gas and propane, two firing points. */
import type { ModelSheet } from '../../domain/procedure/modelSheet.ts';
import { parseModelSheet } from '../../domain/procedure/parseModelSheet.ts';
import { unwrap } from '../../domain/result.ts';

const maker = { kind: 'maker', source: 'test sheet' } as const;

const raw = {
  schema: 'lightoff.model-sheet/1',
  sheetId: 'test-sheet',
  revision: '2026-01',
  issuedOn: '2026-01-15',
  title: 'Test sheet',
  maker: 'Invented Works',
  models: ['T 24'],
  appliance: {
    hotWater: 'combi',
    burner: 'adaptive',
    exchanger: 'stainless',
    ratedInputMaxKw: 24,
    ratedInputMinKw: 4.8,
    ratedInputBasis: 'gross',
    ventMaxC: 90,
    serialPattern: '^[A-Z]{2}\\d{7}$',
  },
  fuels: [{ fuel: 'natural-gas' }, { fuel: 'propane', conversion: 'kit T24-P' }],
  firingPoints: [
    { key: 'high', label: 'High fire', settleS: 180 },
    { key: 'low', label: 'Low fire', settleS: 180 },
  ],
  steady: { minSamples: 2, apartS: 60, o2Points: 0.2, coPpm: 5, coPct: 10, flueK: 2, basis: maker },
  limits: [
    { quantity: 'co2DryVolPct', point: 'high', fuel: 'natural-gas', min: 8.4, max: 9.8, basis: maker },
    { quantity: 'co2DryVolPct', point: 'low', fuel: 'natural-gas', min: 8.0, max: 9.6, basis: maker },
    { quantity: 'co2DryVolPct', point: 'high', fuel: 'propane', min: 9.6, max: 11.0, basis: maker },
    { quantity: 'coAirFreePpm', max: 200, edge: 50, basis: maker },
    { quantity: 'inletPressureMbarG', fuel: 'natural-gas', min: 17, max: 25, basis: maker },
    { quantity: 'systemPressureBarG', point: 'cold', min: 1, max: 1.8, blocks: ['firing'], basis: maker },
    { quantity: 'deltaTK', point: 'high', min: 5, max: 25, basis: maker },
    { quantity: 'waterPh', min: 7, max: 9.5, blocks: ['registration'], basis: maker },
  ],
  relations: [
    { quantity: 'co2DryVolPct', at: 'low', to: 'high', minDifference: -1, maxDifference: 0.2, basis: maker },
    { quantity: 'inletPressureMbarG', at: 'static', to: 'dynamic', maxDifference: 2.5, basis: maker },
  ],
  inputTolerancePct: 8,
  altitude: { method: 'per-1000-ft', pct: 2, fromFt: 0, countedFrom: 'sea-level', basis: maker },
  supplyByEmitter: [
    { emitter: 'panel-radiators', minSupplyC: 35, maxSupplyC: 70, deltaTMinK: 5, deltaTMaxK: 25, basis: maker },
    { emitter: 'floor-slab', minSupplyC: 25, maxSupplyC: 45, deltaTMinK: 4, deltaTMaxK: 12, basis: maker },
  ],
  factoryDefaults: [{ quantity: 'supplySetpointC', value: 80 }],
  lapseHours: { tightness: 12, roomCo: 4, analyserZero: 4, pressure: 24 },
  startup: [
    {
      key: 'before-firing',
      title: 'Before firing',
      who: 'licensed',
      items: [
        { key: 'fresh-o2', label: 'O₂ in fresh air', kind: 'read', quantity: 'freshAirO2VolPct' },
        { key: 'fresh-co', label: 'CO in fresh air', kind: 'read', quantity: 'freshAirCoPpm' },
        { key: 'room-co', label: 'CO in the room', kind: 'read', quantity: 'roomCoPpm', blocks: ['firing'] },
        { key: 'inlet-static', label: 'Static', kind: 'read', quantity: 'inletPressureMbarG', point: 'static' },
        { key: 'tightness-drop', label: 'Drop', kind: 'read', quantity: 'tightnessDropMbar', blocks: ['firing'] },
        { key: 'pressure-cold', label: 'Cold', kind: 'read', quantity: 'systemPressureBarG', point: 'cold' },
        { key: 'relief', label: 'Relief valve', kind: 'read', quantity: 'reliefSettingBarG' },
        { key: 'water-side', label: 'Water side at zero', kind: 'confirm', meets: ['water-side-at-zero'] },
        { key: 'pre-charge', label: 'Pre-charge', kind: 'read', quantity: 'vesselPreChargeBarG' },
        { key: 'ph', label: 'pH', kind: 'read', quantity: 'waterPh', point: 'after' },
        { key: 'inhibitor', label: 'Inhibitor', kind: 'read', quantity: 'inhibitorPct', point: 'after' },
        { key: 'de-air', label: 'Air out', kind: 'hold', seconds: 300, basis: maker, blocks: ['firing'] },
      ],
    },
    {
      key: 'first-fire',
      title: 'First fire',
      who: 'licensed',
      needsClear: 'firing',
      items: [
        {
          key: 'tuning',
          label: 'Tuning run',
          kind: 'tuning',
          stages: [
            { key: 'high', label: 'High' },
            { key: 'low', label: 'Low' },
          ],
          postRunWaitS: 30,
          needsCasingClosed: true,
          needsHeatLoadOpen: true,
          basis: maker,
        },
      ],
    },
    {
      key: 'combustion',
      title: 'Combustion',
      who: 'licensed',
      items: [
        series('combustion-high', 'high'),
        series('combustion-low', 'low'),
        { key: 'inlet-dynamic', label: 'Dynamic', kind: 'read', quantity: 'inletPressureMbarG', point: 'dynamic' },
        { key: 'dial', label: 'Dial', kind: 'read', quantity: 'meterDialM3', point: 'high' },
        { key: 'turns', label: 'Turns', kind: 'read', quantity: 'meterTurns', point: 'high' },
        { key: 'seconds', label: 'Time', kind: 'read', quantity: 'meterSeconds', point: 'high' },
      ],
    },
    {
      key: 'leaving',
      title: 'Leaving',
      who: 'licensed',
      items: [
        { key: 'pressure-hot', label: 'Hot', kind: 'read', quantity: 'systemPressureBarG', point: 'hot' },
        { key: 'setpoint', label: 'Supply setting', kind: 'read', quantity: 'supplySetpointC' },
        { key: 'mixed', label: 'At the tap', kind: 'read', quantity: 'mixedOutletC' },
      ],
    },
  ],
  cover: null,
};

function series(key: string, firingPoint: string) {
  return {
    key,
    label: `Combustion ${firingPoint}`,
    kind: 'series',
    firingPoint,
    quantities: ['o2DryVolPct', 'co2DryVolPct', 'coPpm', 'flueGasC', 'intakeAirC', 'supplyC', 'returnC'],
    optional: ['coAirFreePpm', 'coCo2Ratio', 'fanSpeedRpm'],
    blocks: ['leaving'],
  };
}

/** Throws when the changes make it no sheet. */
export function judgementSheet(changes: Partial<Record<keyof ModelSheet, unknown>> = {}): ModelSheet {
  return unwrap(parseModelSheet({ ...raw, ...changes }));
}
