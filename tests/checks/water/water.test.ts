import { describeCheckRows } from '../checkRow.ts';
import { fillWaterRows } from './fillWaterRows.ts';
import { waterQualityRows } from './waterQualityRows.ts';

describeCheckRows('water quality: hardness, blending, scale', waterQualityRows, { published: 9, computed: 12 });
describeCheckRows('water quality: fill water limits', fillWaterRows, { published: 107, computed: 1 });
