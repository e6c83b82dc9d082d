/** The two antifreezes of heating systems. Propylene glycol is the usual one; ethylene glycol is poisonous. */
export type Glycol = 'propylene-glycol' | 'ethylene-glycol';
