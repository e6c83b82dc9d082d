/** Every entry rule that works on the readings of one run, by its row in the trade's list of data mistakes. */
import { absoluteNotGauge } from './absoluteNotGauge.ts';
import { airFreeTypedAsMeasured } from './airFreeTypedAsMeasured.ts';
import { analyserNotZeroed } from './analyserNotZeroed.ts';
import { analyserOnOtherFuel } from './analyserOnOtherFuel.ts';
import { blankAsZero } from './blankAsZero.ts';
import { celsiusInFahrenheit } from './celsiusInFahrenheit.ts';
import { copiedFromOtherPoint } from './copiedFromOtherPoint.ts';
import { decimalPointMissing } from './decimalPointMissing.ts';
import { dialSize } from './dialSize.ts';
import { digitsSwapped } from './digitsSwapped.ts';
import { fahrenheitInCelsius } from './fahrenheitInCelsius.ts';
import { fieldsSwapped } from './fieldsSwapped.ts';
import { flueBelowReturn } from './flueBelowReturn.ts';
import { gasPressureUnit } from './gasPressureUnit.ts';
import { heatingValueTimesTen } from './heatingValueTimesTen.ts';
import { highLowSwapped } from './highLowSwapped.ts';
import { instrumentOutOfDate } from './instrumentOutOfDate.ts';
import type { MistakeRule } from './mistakeFinding.ts';
import { o2Co2Swapped } from './o2Co2Swapped.ts';
import { oddPair } from './oddPair.ts';
import { overRangeAsValue } from './overRangeAsValue.ts';
import { percentNotPpm } from './percentNotPpm.ts';
import { powerUnit } from './powerUnit.ts';
import { ratioMistyped } from './ratioMistyped.ts';
import { readBeforeSteady } from './readBeforeSteady.ts';
import { serialOffPattern } from './serialOffPattern.ts';
import { staticDynamicSwapped } from './staticDynamicSwapped.ts';
import { supplyReturnSwapped } from './supplyReturnSwapped.ts';
import { systemPressureUnit } from './systemPressureUnit.ts';

export const MISTAKE_RULES: readonly MistakeRule[] = [
  o2Co2Swapped,
  analyserOnOtherFuel,
  airFreeTypedAsMeasured,
  percentNotPpm,
  overRangeAsValue,
  ratioMistyped,
  decimalPointMissing,
  fahrenheitInCelsius,
  celsiusInFahrenheit,
  gasPressureUnit,
  systemPressureUnit,
  absoluteNotGauge,
  staticDynamicSwapped,
  powerUnit,
  dialSize,
  heatingValueTimesTen,
  digitsSwapped,
  supplyReturnSwapped,
  flueBelowReturn,
  readBeforeSteady,
  analyserNotZeroed,
  instrumentOutOfDate,
  highLowSwapped,
  copiedFromOtherPoint,
  serialOffPattern,
  fieldsSwapped,
  blankAsZero,
  oddPair,
];
