/** What a sheet says of the supply temperature for a kind of emitter; undefined: nothing, and no limit is made up. */
import type { EmitterKind, ModelSheet } from './modelSheet.ts';

export type EmitterSupply = ModelSheet['supplyByEmitter'][number];

export function supplyForEmitter(sheet: ModelSheet, emitter: EmitterKind): EmitterSupply | undefined {
  return sheet.supplyByEmitter.find((row) => row.emitter === emitter);
}
