/** The smallest sheet around a few steps: for tests of one rule at a time. */
import type { ModelSheet } from '../../domain/procedure/modelSheet.ts';
import { parseModelSheet } from '../../domain/procedure/parseModelSheet.ts';

type Loose = Readonly<Record<string, unknown>>;

export const A_BASIS = { kind: 'common-practice', source: 'a test' } as const;

export function tinySheetFile(startup: readonly Loose[], overrides: Loose = {}): Loose {
  return {
    schema: 'lightoff.model-sheet/1',
    sheetId: 'tiny',
    revision: '2026-01',
    issuedOn: '2026-01-01',
    title: 'A tiny sheet',
    maker: null,
    models: [],
    appliance: {
      hotWater: 'any',
      burner: 'any',
      exchanger: 'other',
      ratedInputMaxKw: null,
      ratedInputMinKw: null,
      ratedInputBasis: 'gross',
      ventMaxC: null,
      serialPattern: null,
    },
    fuels: [{ fuel: 'natural-gas' }, { fuel: 'propane' }],
    firingPoints: [{ key: 'high', label: 'High fire', settleS: 300 }],
    steady: { minSamples: 2, apartS: 60, o2Points: 0.2, coPpm: 5, coPct: 10, flueK: 2, basis: A_BASIS },
    limits: [],
    inputTolerancePct: 10,
    altitude: { method: 'not-on-sheet' },
    supplyByEmitter: [],
    lapseHours: { tightness: 24, roomCo: 8, analyserZero: 8, pressure: 24 },
    startup,
    cover: null,
    ...overrides,
  };
}

export function tinySheet(startup: readonly Loose[], overrides: Loose = {}): ModelSheet {
  const parsed = parseModelSheet(tinySheetFile(startup, overrides));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.error));
  return parsed.value;
}

export function aStep(key: string, items: readonly Loose[], more: Loose = {}): Loose {
  return { key, title: key, who: 'anyone', items, ...more };
}

export function anItem(kind: string, key: string, more: Loose = {}): Loose {
  return { kind, key, label: key, ...more };
}
