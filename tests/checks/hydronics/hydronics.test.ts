import { describe, expect, it } from 'vitest';
import { describeCheckRows } from '../checkRow.ts';
import { fillWaterRows } from '../water/fillWaterRows.ts';
import { waterQualityRows } from '../water/waterQualityRows.ts';
import { condensatePracticeRows, condensingRows, condensingTableRows } from './condensingRows.ts';
import { emitterRows } from './emitterRows.ts';
import { glycolRows } from './glycolRows.ts';
import { hotWaterRows, hotWaterTableRows, scaldRows } from './hotWaterRows.ts';
import { outputRows, ruleErrorRows } from './outputRows.ts';
import { pipeRows } from './pipeRows.ts';
import { pressureRows } from './pressureRows.ts';
import { resetRows } from './resetRows.ts';
import { printedIds } from './rowKinds.ts';
import { trendRows } from './trendRows.ts';
import { vesselRows } from './vesselRows.ts';
import { tubeTableRows, volumeRows } from './volumeRows.ts';
import { waterRows } from './waterRows.ts';

describeCheckRows('pressure, heat output, trends', [...outputRows, ...ruleErrorRows, ...pressureRows, ...trendRows], {
  published: 4,
  computed: 42,
});
describeCheckRows('expansion vessels', vesselRows, { published: 2, computed: 24 });
describeCheckRows('tubes and system volume', [...volumeRows, ...tubeTableRows], { published: 8, computed: 56 });
describeCheckRows('emitters and reset', [...emitterRows, ...resetRows], { published: 4, computed: 49 });
describeCheckRows('domestic hot water', [...hotWaterRows, ...hotWaterTableRows, ...scaldRows], {
  published: 10,
  computed: 55,
});
describeCheckRows('condensing', [...condensingRows, ...condensingTableRows, ...condensatePracticeRows], {
  published: 1,
  computed: 83,
});
describeCheckRows('pipes', pipeRows, { published: 3, computed: 27 });

describe('numbered rows', () => {
  it('covers all 106 of them', () => {
    const rows = [
      ...waterRows,
      ...glycolRows,
      ...outputRows,
      ...pressureRows,
      ...vesselRows,
      ...volumeRows,
      ...resetRows,
      ...emitterRows,
      ...hotWaterRows,
      ...waterQualityRows,
      ...fillWaterRows,
      ...condensingRows,
      ...pipeRows,
      ...trendRows,
    ];
    const numbered = printedIds(rows).filter((id) => /^[A-Z]\d+$/.test(id));
    const series = {
      W: [12, 15],
      G: 6,
      Q: 11,
      P: 10,
      E: 14,
      V: 5,
      R: 11,
      O: 10,
      D: 7,
      H: 8,
      C: 8,
      F: 9,
      M: 3,
    } as const;
    const expected = Object.entries(series).flatMap(([letter, range]) => {
      const [first, last] = typeof range === 'number' ? [1, range] : range;
      return Array.from({ length: last - first + 1 }, (_, index) => `${letter}${first + index}`);
    });
    expect(expected).toHaveLength(106);
    expect([...numbered].sort()).toEqual([...expected].sort());
  });
});
