/** Every worksheet there is, in the order of the list. A new one is a file under `sheets/` and a line here. */
import type { Worksheet, WorksheetGroup } from './core/worksheet.ts';
import { altitude } from './sheets/altitude.ts';
import { coldFill } from './sheets/coldFill.ts';
import { combustion } from './sheets/combustion.ts';
import { condensate } from './sheets/condensate.ts';
import { condensing } from './sheets/condensing.ts';
import { emissions } from './sheets/emissions.ts';
import { emitterOutput } from './sheets/emitterOutput.ts';
import { gasComposition } from './sheets/gasComposition.ts';
import { gasPipe } from './sheets/gasPipe.ts';
import { gasRate } from './sheets/gasRate.ts';
import { glycol } from './sheets/glycol.ts';
import { hardness } from './sheets/hardness.ts';
import { heatOutput } from './sheets/heatOutput.ts';
import { hotWater } from './sheets/hotWater.ts';
import { pipeLoss } from './sheets/pipeLoss.ts';
import { resetCurve } from './sheets/resetCurve.ts';
import { suctionHead } from './sheets/suctionHead.ts';
import { systemVolume } from './sheets/systemVolume.ts';
import { vesselCheck } from './sheets/vesselCheck.ts';
import { vesselSize } from './sheets/vesselSize.ts';
import { waterQuality } from './sheets/waterQuality.ts';

export const WORKSHEETS: readonly Worksheet[] = [
  combustion,
  emissions,
  condensate,
  gasRate,
  gasComposition,
  altitude,
  gasPipe,
  coldFill,
  vesselSize,
  vesselCheck,
  resetCurve,
  condensing,
  heatOutput,
  systemVolume,
  emitterOutput,
  pipeLoss,
  suctionHead,
  glycol,
  hotWater,
  waterQuality,
  hardness,
];

export const WORKSHEET_GROUPS: readonly WorksheetGroup[] = [
  'Burner and flue',
  'Gas',
  'Water side',
  'Hot water and water quality',
];

export function findWorksheet(key: string): Worksheet | undefined {
  return WORKSHEETS.find((worksheet) => worksheet.key === key);
}
