/** The pressure this system's height asks for, beside the box for the cold fill. Common practice; the maker's sheet wins. */
import { coldFillPressure } from '../../../domain/hydronics/pressure/coldFillPressure.ts';
import { PRESSURE_CUSTOMS } from '../../../domain/hydronics/pressure/pressureCustoms.ts';
import { METRIC_RULE_BAR_PER_M } from '../../../domain/hydronics/pressure/staticGradient.ts';
import { regionOf } from '../../../domain/judgement/regions.ts';
import type { ItemOf } from '../../../domain/procedure/modelSheet.ts';
import { QuantityText } from '../../kit/QuantityText.tsx';
import { useRun } from '../state/RunContext.ts';

export function ColdFillBeside({ item }: { readonly item: ItemOf<'read'> }) {
  const { view } = useRun();
  const { site } = view.record;
  if (item.quantity !== 'systemPressureBarG' || item.point === 'hot') return null;
  if (site.systemHeightM === null) {
    return (
      <p className="run-beside">The height of the system is not on file: no fill pressure can be worked out from it.</p>
    );
  }
  const practice = regionOf(site.jurisdiction) === 'north-america' ? 'north-america' : 'europe';
  const customs = PRESSURE_CUSTOMS[practice];
  const fill = coldFillPressure({ systemHeightM: site.systemHeightM, marginBar: customs.marginBar.default });
  if (!fill.ok) return null;
  return (
    <p className="run-beside">
      From the height of <b>{site.systemHeightM} m</b>:{' '}
      <b>
        <QuantityText quantity="systemPressureBarG" value={fill.value} />
      </b>{' '}
      <span className="lo-faint">
        height · {METRIC_RULE_BAR_PER_M} bar/m +{' '}
        <QuantityText quantity="systemPressureBarG" value={customs.marginBar.default} /> at the top (
        {customs.marginBasis})
      </span>
    </p>
  );
}
