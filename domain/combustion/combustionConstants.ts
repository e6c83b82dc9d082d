/**
 * Physical constants shared by the combustion formulas.
 *
 * Oxygen in air comes in three values on purpose: each published formula is reproduced with the value it prints.
 * Source   SI (R); AGA Report No. 8 dry air (20.946 %); US EPA methods (20.9 %); 1. BImSchV (21 %);
 *          ISO 6976:2016 (molar masses, latent heat of water, dry air)
 * Checked  by every table of tests/checks/combustion/
 */
import { STANDARD_ATMOSPHERE_KPA, ZERO_CELSIUS_K } from '../quantity/conversions.ts';

export const GAS_CONSTANT_J_PER_MOL_K = 8.314462618;

/** Stoichiometry; the rest of dry air is treated as inert and counted as nitrogen. */
export const O2_IN_DRY_AIR_VOL_PCT = 20.946;
/** US air-free and EPA formulas. */
export const O2_IN_AIR_EPA_VOL_PCT = 20.9;
/** German and Belgian flue-loss and reference-oxygen formulas. */
export const O2_IN_AIR_GERMAN_VOL_PCT = 21;

export const MOLAR_MASS_DRY_AIR_G_PER_MOL = 28.96546;
export const MOLAR_MASS_WATER_G_PER_MOL = 18.015;
export const MOLAR_MASS_CO2_G_PER_MOL = 44.0095;
export const MOLAR_MASS_CO_G_PER_MOL = 28.01;
/** NOx is booked as NO2, whatever the cell measured. */
export const MOLAR_MASS_NO2_G_PER_MOL = 46.0055;
export const MOLAR_MASS_N2_G_PER_MOL = 28.013;
export const MOLAR_MASS_O2_G_PER_MOL = 31.998;
export const MOLAR_MASS_CARBON_G_PER_MOL = 12.011;
export const MOLAR_MASS_H2_G_PER_MOL = 2.016;
export const MOLAR_MASS_SULPHUR_G_PER_MOL = 32.06;

/** Ideal gas at 0 °C and 101.325 kPa: the "normal" cubic metre of emission units, 22.41397 L/mol. */
export const NORMAL_MOLAR_VOLUME_M3_PER_MOL =
  (GAS_CONSTANT_J_PER_MOL_K * ZERO_CELSIUS_K) / (STANDARD_ATMOSPHERE_KPA * 1000);
