/** Connected gas loads against the meter. Above it the dispatcher calls the utility before anybody drives there. */
import { ENTRY_UNITS } from '../../domain/quantity/entryUnits.ts';
import { formatNumber } from '../../domain/quantity/formatQuantity.ts';
import { usualUnit } from '../form/typedAmount.ts';
import { Note } from '../kit/Note.tsx';
import { useUnitSystem } from '../operations/AppStatus.tsx';
import type { LoadBalance } from './gasForm.ts';

export function GasLoadNote({ balance }: { readonly balance: LoadBalance }) {
  const unitSystem = useUnitSystem();
  const symbol = usualUnit('power', unitSystem);
  const unit = ENTRY_UNITS.power.find((one) => one.symbol === symbol) ?? ENTRY_UNITS.power[0];
  const show = (kw: number) => `${formatNumber(unit.fromOwn(kw), unit.symbol === 'Btu/h' ? 0 : 1)} ${unit.symbol}`;
  const sharePct = (balance.loadKw / balance.capacityKw) * 100;
  const isPartial = balance.unknownLoads.length > 0;
  const sums = `${isPartial ? 'At least ' : ''}${show(balance.loadKw)} connected, the meter gives ${show(balance.capacityKw)}: ${isPartial ? 'at least ' : ''}${formatNumber(sharePct, 0)} %.`;
  const unknown = isPartial ? ` Not in the sum, input not known: ${balance.unknownLoads.join(', ')}.` : '';
  return sharePct > 100 ? (
    <Note tone="ember" title="More connected than the meter can give" isSpoken>
      {sums}
      {unknown} Call the utility before the visit. On site the dynamic pressure must be read with every appliance
      running.
    </Note>
  ) : (
    <Note tone={isPartial ? 'caution' : 'plain'}>
      {sums}
      {unknown}
    </Note>
  );
}
