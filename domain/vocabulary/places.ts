/** Sites and what stands there: the words the store keeps and the contract takes. Fuels and dates of cover are the model sheet's. */
export const BUILDING_KINDS = ['home', 'rental', 'new-build', 'commercial'] as const;
export const DATE_PRECISIONS = ['day', 'month', 'year'] as const;
export type DatePrecision = (typeof DATE_PRECISIONS)[number];

/** What may rest on a house having changed hands, so that it cannot be put back any more. */
export const TRANSFER_CONSEQUENCES = ['seals', 'agreements', 'messages', 'notices', 'sign-offs', 'roles'] as const;
export type TransferConsequence = (typeof TRANSFER_CONSEQUENCES)[number];
