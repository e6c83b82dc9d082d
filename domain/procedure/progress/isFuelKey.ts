/** Whether an answer names a fuel. */
import { FUELS, type FuelKey } from '../modelSheet.ts';

export function isFuelKey(value: string): value is FuelKey {
  return (FUELS as readonly string[]).includes(value);
}
