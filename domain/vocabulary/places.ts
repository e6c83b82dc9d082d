/** Sites and what stands there: the words the store keeps and the contract takes. Fuels and dates of cover are the model sheet's. */
export const BUILDING_KINDS = ['home', 'rental', 'new-build', 'commercial'] as const;
export const DATE_PRECISIONS = ['day', 'month', 'year'] as const;
export type DatePrecision = (typeof DATE_PRECISIONS)[number];
