/** `12 customers, 14 sites, 15 appliances and 9 past services`. */
import type { ImportCheck } from '../../electron/contract/imports.ts';

export function countWords({ customers, sites, appliances, services }: ImportCheck['counts']): string {
  const parts = [
    counted(customers, 'customer'),
    counted(sites, 'site'),
    counted(appliances, 'appliance'),
    counted(services, 'past service'),
  ].filter((part) => part !== null);
  return parts.length === 0 ? 'nothing new' : parts.join(', ');
}

function counted(count: number, noun: string): string | null {
  return count === 0 ? null : `${count} ${noun}${count === 1 ? '' : 's'}`;
}
