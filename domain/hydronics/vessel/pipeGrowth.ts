/** What the pipes are made of decides how much of the water's growth they take up themselves. */
export type PipeMetal = 'steel' | 'copper';

/** Linear expansion per kelvin: ASHRAE's 6.5e-6 and 9.5e-6 per °F. */
export const LINEAR_EXPANSION_PER_K: Record<PipeMetal, number> = { steel: 6.5e-6 * 1.8, copper: 9.5e-6 * 1.8 };
