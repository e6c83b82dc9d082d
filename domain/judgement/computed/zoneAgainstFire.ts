/**
 * The smallest zone against the boiler's lowest and highest fire: on a zone that takes less than the lowest the burner
 * cycles, and high fire can't be held for a combustion test on one that takes less than the highest.
 */
import { buildFinding } from '../buildFinding.ts';
import type { Finding } from '../finding.ts';
import { orNull } from '../orNull.ts';
import type { RunContext } from '../runContext.ts';
import { zoneVersusMinimumFire } from '../site/zoneVersusMinimumFire.ts';

export function zoneAgainstFire(context: RunContext): readonly Finding[] {
  const { ratedInputMaxKw, ratedInputMinKw } = context.sheet.appliance;
  const maxInputKw = context.record.appliance.ratedInputKw ?? ratedInputMaxKw;
  const zone = smallestZone(context);
  const [highest] = context.sheet.firingPoints;
  if (zone === null || highest === undefined || maxInputKw === null || ratedInputMinKw === null) return [];
  const fire = orNull(
    zoneVersusMinimumFire({ maxInputKw, turndown: maxInputKw / ratedInputMinKw, openZonesKw: [zone.ratedKw] }),
  );
  if (fire === null || !fire.willCycle) return [];
  return [
    buildFinding({
      subject: `computed:smallest-zone@${highest.key}`,
      verdict: 'outside',
      basis: {
        from: 'practice',
        source: { kind: 'common-practice', source: 'a zone is to take the lowest fire, or have a buffer beside it' },
        formula: 'output of the smallest zone against the lowest fire',
        result: { value: zone.ratedKw, unit: 'kW', plusMinus: null },
        inputs: {
          zone: zone.name,
          lowestFireKw: fire.lowestFireKw,
          willCycle: 'yes',
          holdsHighFire: fire.holdsHighFire ? 'yes' : 'no',
        },
      },
    }),
  ];
}

/** Of the zones whose output is known in full; an emitter without a zone is one of its own. */
function smallestZone({ record }: RunContext): { readonly name: string; readonly ratedKw: number } | null {
  const loads = record.site.zones ?? [];
  const zones = [...Map.groupBy(loads, ({ zone }) => zone)].flatMap(([name, emitters]) =>
    name === null
      ? emitters.map(({ ratedKw }) => ({ name: 'zone without a name', ratedKw }))
      : [{ name, ratedKw: emitters.reduce<number | null>((sum, { ratedKw }) => add(sum, ratedKw), 0) }],
  );
  return zones.reduce<{ readonly name: string; readonly ratedKw: number } | null>(
    (least, { name, ratedKw }) =>
      ratedKw !== null && (least === null || ratedKw < least.ratedKw) ? { name, ratedKw } : least,
    null,
  );
}

function add(sum: number | null, ratedKw: number | null): number | null {
  return sum === null || ratedKw === null ? null : sum + ratedKw;
}
