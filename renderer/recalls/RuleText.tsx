/** Which appliances a notice is about, as one line. */
import type { RecallFields } from '../../electron/contract/recalls.ts';
import { AmountText } from '../kit/AmountText.tsx';
import { rangeText } from './recallForm.ts';

export function RuleText({
  recall: { maker, models, serialRanges, altitudeMinM, altitudeMaxM },
}: {
  readonly recall: Pick<RecallFields, 'maker' | 'models' | 'serialRanges' | 'altitudeMinM' | 'altitudeMaxM'>;
}) {
  return (
    <>
      {models.length === 0 ? `every model of ${maker}` : `${maker} ${models.join(', ')}`}
      {serialRanges.length === 0 ? null : `; serials ${serialRanges.map(rangeText).join(', ')}`}
      {altitudeMinM === null ? null : (
        <>
          ; from <AmountText dimension="length" own={altitudeMinM} decimals={0} /> above sea level up
        </>
      )}
      {altitudeMaxM === null ? null : (
        <>
          ; up to <AmountText dimension="length" own={altitudeMaxM} decimals={0} /> above sea level
        </>
      )}
    </>
  );
}
