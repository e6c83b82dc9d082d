/**
 * Hardness that fill and top-up water may have, as data: VDI 2035 Part 1, mol/m³ of alkaline earths (mmol/L).
 *
 * Source   2005: the table as quoted in two third-party manuals and a contractor's page; 2021: cells from memory
 * Checked  tests/checks/water/fillWaterRows.ts
 */
export type FillWaterEdition = '2005' | '2021';

export type FillWaterTable = {
  readonly title: string;
  /** Upper ends of the lower and middle column, litres per kW of the smallest generator. */
  readonly columnEdgesLPerKw: readonly [lower: number, middle: number];
  /** Whether exactly an edge still belongs to the column below it. Sources differ for 2005. */
  readonly edgeBelongsBelow: boolean;
  readonly rows: readonly FillWaterRow[];
  readonly fromMemory?: true;
};

export type FillWaterRow = {
  /** Upper end of the row, kW of all generators together; null is without end. */
  readonly outputUpToKw: number | null;
  /** Below 50 kW it matters whether the smallest generator holds at least 0.3 L/kW: circulating heaters and combis don't. */
  readonly generator: 'any' | 'at-least-0.3-l-per-kw' | 'less-than-0.3-l-per-kw';
  /** Per column; null: no limit. */
  readonly limitMolPerM3: readonly [number | null, number | null, number | null];
};

export const FILL_WATER_TABLES: Record<FillWaterEdition, FillWaterTable> = {
  '2005': {
    title: 'VDI 2035 Part 1:2005',
    columnEdgesLPerKw: [20, 50],
    edgeBelongsBelow: false,
    rows: [
      // Some trade summaries print 2.0 in the middle cell.
      { outputUpToKw: 50, generator: 'at-least-0.3-l-per-kw', limitMolPerM3: [null, 3, 0.02] },
      { outputUpToKw: 50, generator: 'less-than-0.3-l-per-kw', limitMolPerM3: [3, 2, 0.02] },
      { outputUpToKw: 200, generator: 'any', limitMolPerM3: [2, 1.5, 0.02] },
      { outputUpToKw: 600, generator: 'any', limitMolPerM3: [1.5, 0.02, 0.02] },
      { outputUpToKw: null, generator: 'any', limitMolPerM3: [0.02, 0.02, 0.02] },
    ],
  },
  '2021': {
    title: 'VDI 2035 Part 1:2021',
    columnEdgesLPerKw: [20, 40],
    edgeBelongsBelow: true,
    fromMemory: true,
    rows: [
      { outputUpToKw: 50, generator: 'at-least-0.3-l-per-kw', limitMolPerM3: [null, 3, 0.05] },
      { outputUpToKw: 50, generator: 'less-than-0.3-l-per-kw', limitMolPerM3: [3, 1.5, 0.05] },
      { outputUpToKw: 200, generator: 'any', limitMolPerM3: [2, 1, 0.05] },
      { outputUpToKw: 600, generator: 'any', limitMolPerM3: [1.5, 0.05, 0.05] },
      { outputUpToKw: null, generator: 'any', limitMolPerM3: [0.05, 0.05, 0.05] },
    ],
  },
};
