/** What keeps the sum of gas loads from being complete: no supply, no capacity, an appliance on file that is not in the list. */
import type { OutputOf } from '../../electron/contract/index.ts';
import { Note } from '../kit/Note.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';

export function GasLoadGaps({ siteId }: { readonly siteId: string }) {
  const found = useOperation('sites.get', { siteId });
  if (found.state !== 'ready') return null;
  const gaps = gasLoadGaps(found.value);
  if (gaps.length === 0) return null;
  return (
    <Note
      tone="caution"
      title="The gas load is not complete"
      action={
        <RouteLink to="gas-supply" params={{ siteId }}>
          Gas supply
        </RouteLink>
      }
    >
      {gaps.join(' ')}
    </Note>
  );
}

export function gasLoadGaps({
  gasSupply,
  appliances,
}: Pick<OutputOf<'sites.get'>, 'gasSupply' | 'appliances'>): readonly string[] {
  if (gasSupply === null) return ['No gas supply is on file for this site.'];
  if (gasSupply.fuel === 'heating-oil') return [];
  const counted = new Set(gasSupply.loads.flatMap(({ applianceId }) => (applianceId === null ? [] : [applianceId])));
  const left = appliances.filter(({ applianceId }) => !counted.has(applianceId));
  return [
    ...gasSupply.loads
      .filter(({ inputKw }) => inputKw === null)
      .map(({ name }) => `${name} is connected, its input is not known.`),
    ...left.map(({ maker, model, serial }) => `${maker} ${model}, ${serial}, is not counted.`),
    ...(gasSupply.kind === 'meter' && gasSupply.capacityM3PerH === null ? ['The meter’s capacity is not known.'] : []),
    ...(gasSupply.heatingValueMjPerM3 === null ? ['The heating value is not known.'] : []),
  ];
}
