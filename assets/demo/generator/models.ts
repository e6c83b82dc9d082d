/** The invented makers' boilers as their plates have them: each model of a sheet with its own rated input, and what of it reaches the water. */
import { SITE_FUELS } from '../../../domain/combustion/fuels.ts';
import type { ModelSheet } from '../../../domain/procedure/modelSheet.ts';

export type BoilerModel = {
  readonly model: string;
  readonly sheet: ModelSheet;
  /** As on the plate, in the sheet's basis. */
  readonly ratedInputKw: number;
  /** To the water at high fire, 80/60 °C. */
  readonly outputKw: number;
  readonly waterL: number;
};

/** Rated input in the basis of the maker's plate, and water content. The largest model of a sheet is the sheet's own figure. */
const PLATES: Readonly<Record<string, { readonly ratedInputKw: number; readonly waterL: number }>> = {
  'Skerry 20 S': { ratedInputKw: 20.4, waterL: 3 },
  'Skerry 35 S': { ratedInputKw: 35.2, waterL: 4 },
  'Cinder 24 C': { ratedInputKw: 24.5, waterL: 2 },
  'Cinder 30 C': { ratedInputKw: 30.6, waterL: 3 },
  'Foundry 30 H': { ratedInputKw: 30.8, waterL: 5 },
  'Foundry 40 H': { ratedInputKw: 41, waterL: 6 },
  'Pumice 18 LP': { ratedInputKw: 18.9, waterL: 2 },
  'Bellows 150': { ratedInputKw: 150, waterL: 85 },
};

/** Useful share of the input at 80/60 °C: condensing boilers on either basis, cast iron kept out of condensing; common practice, no source. */
const SHARE_TO_WATER = { net: 0.97, gross: 0.88, castIron: 0.85 };

export function modelsOf(sheets: readonly ModelSheet[]): readonly BoilerModel[] {
  return sheets.flatMap((sheet) =>
    sheet.models.map((model) => {
      const plate = PLATES[model];
      if (plate === undefined) throw new Error(`nothing is known of the plate of ${model}`);
      const { exchanger, ratedInputBasis } = sheet.appliance;
      const share = exchanger === 'cast-iron' ? SHARE_TO_WATER.castIron : SHARE_TO_WATER[ratedInputBasis];
      return { model, sheet, ...plate, outputKw: plate.ratedInputKw * share };
    }),
  );
}

/** A net plate as the gas meter sees it: the heat of the water vapour belongs to the gas burned too. */
export function inputKwGross({ sheet, ratedInputKw }: BoilerModel, fuel: 'natural-gas' | 'propane'): number {
  if (sheet.appliance.ratedInputBasis === 'gross') return ratedInputKw;
  return (ratedInputKw * SITE_FUELS[fuel].hhv25CKj) / SITE_FUELS[fuel].lhv25CKj;
}
