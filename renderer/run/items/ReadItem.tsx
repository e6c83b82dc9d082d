/** One reading, large, with what belongs beside it: fill pressure for this height, supply temperature for these emitters. */
import { useState } from 'react';
import type { ItemOf } from '../../../domain/procedure/modelSheet.ts';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import { ReadingBox } from '../field/ReadingBox.tsx';
import { useRun } from '../state/RunContext.ts';
import { pointWords } from '../words/pointWords.ts';
import { ColdFillBeside } from './ColdFillBeside.tsx';
import { StandsBecause } from './StandsBecause.tsx';
import { SupplyBeside } from './SupplyBeside.tsx';

export function ReadItem({ item, address }: { readonly item: ItemOf<'read'>; readonly address: ItemAddress }) {
  const { view, saveAndGoOn, sayNotTaken } = useRun();
  const [here] = useState<ItemAddress>({ stepKey: address.stepKey, itemKey: item.key });
  const point = pointWords(item.point, view.sheet);
  return (
    <div className="run-read">
      <ReadingBox
        address={here}
        quantity={item.quantity}
        point={item.point}
        sample={1}
        label={point === '' ? item.label : `${item.label} (${point})`}
        size="large"
        isMain
        onEnter={(commit, notTaken) => void saveAndGoOn(here, commit).then(() => sayNotTaken(notTaken))}
      />
      <StandsBecause item={item} address={here} />
      <ColdFillBeside item={item} />
      <SupplyBeside item={item} />
    </div>
  );
}
