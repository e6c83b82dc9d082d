/**
 * Unit factors and conversions: the one place where a foreign unit becomes SI or leaves it.
 *
 * Exact factors are built from their definitions (pound, inch, standard gravity, IT calorie), so that no rounded digit
 * enters; the two physical ones (water at 4 °C and at 60 °F, mercury) name the density they rest on.
 * A finite number gives a finite number; gauge stays gauge and absolute stays absolute.
 *
 * Source   NIST SP 811 (2008), Appendix B; definitions of the international yard and pound (1959)
 * Checked  tests/checks/units/
 */
import type { BarGauge, Celsius, Kelvin, KelvinDifference, Litre, LPerMin, MbarGauge, Metre } from './units.ts';

/* Length, area, volume, mass */
export const METRES_PER_INCH = 0.0254;
export const METRES_PER_FOOT = 0.3048;
export const MM_PER_INCH = 25.4;
export const SQUARE_METRES_PER_SQUARE_FOOT = METRES_PER_FOOT ** 2;
export const LITRES_PER_CUBIC_FOOT = 28.316846592;
export const CUBIC_METRES_PER_CUBIC_FOOT = LITRES_PER_CUBIC_FOOT / 1000;
export const LITRES_PER_US_GALLON = 3.785411784;
export const LITRES_PER_IMPERIAL_GALLON = 4.54609;
export const KG_PER_LB = 0.45359237;
export const MG_PER_GRAIN = 64.79891;

/* Gravity and force */
export const STANDARD_GRAVITY_M_PER_S2 = 9.80665;
const NEWTONS_PER_POUND_FORCE = KG_PER_LB * STANDARD_GRAVITY_M_PER_S2;

/* Pressure. "Inch of water" without further words is the conventional one: 1000 kg/m³. */
export const PA_PER_BAR = 100_000;
export const PA_PER_MBAR = 100;
export const PA_PER_KPA = 1000;
export const PA_PER_PSI = NEWTONS_PER_POUND_FORCE / METRES_PER_INCH ** 2;
export const PA_PER_IN_WC = 1000 * STANDARD_GRAVITY_M_PER_S2 * METRES_PER_INCH;
export const PA_PER_FT_WC = 12 * PA_PER_IN_WC;
export const PA_PER_MM_WC = STANDARD_GRAVITY_M_PER_S2;
/** Density of water 999.972 kg/m³ at 4 °C (39.2 °F). */
export const PA_PER_IN_WC_AT_4_C = 999.972 * STANDARD_GRAVITY_M_PER_S2 * METRES_PER_INCH;
/** Density of water 999.016 kg/m³ at 60 °F. */
export const PA_PER_IN_WC_AT_60_F = 999.016 * STANDARD_GRAVITY_M_PER_S2 * METRES_PER_INCH;
/** Conventional mercury, 13 595.1 kg/m³. */
export const PA_PER_IN_HG = 13_595.1 * STANDARD_GRAVITY_M_PER_S2 * METRES_PER_INCH;
export const PA_PER_KGF_PER_CM2 = STANDARD_GRAVITY_M_PER_S2 * 10_000;
export const STANDARD_ATMOSPHERE_PA = 101_325;
export const STANDARD_ATMOSPHERE_KPA = STANDARD_ATMOSPHERE_PA / PA_PER_KPA;

/* Energy, power and what follows from them. Btu is the International Table one. */
export const J_PER_BTU = 1055.05585262;
export const KJ_PER_BTU = J_PER_BTU / 1000;
export const BTU_PER_MMBTU = 1_000_000;
export const KWH_PER_MMBTU = J_PER_BTU / 3.6;
export const W_PER_BTU_PER_H = J_PER_BTU / 3600;
export const KW_PER_MBH = W_PER_BTU_PER_H;
export const KW_PER_MMBTU_PER_H = KW_PER_MBH * 1000;
export const KW_PER_REFRIGERATION_TON = 12 * KW_PER_MBH;
/** The US therm is defined as 105 480 400 J (Btu at 59 °F), not as 100 000 IT Btu. */
export const KWH_PER_US_THERM = 105_480_400 / 3_600_000;
export const KWH_PER_IT_THERM = J_PER_BTU / 36;
export const W_PER_HORSEPOWER = 550 * METRES_PER_FOOT * NEWTONS_PER_POUND_FORCE;
export const W_PER_M2_PER_BTU_PER_H_FT2 = W_PER_BTU_PER_H / SQUARE_METRES_PER_SQUARE_FOOT;
export const W_PER_M2_PER_W_PER_FT2 = 1 / SQUARE_METRES_PER_SQUARE_FOOT;
/** Btu per pound and °F equals the IT kilocalorie per kilogram and K. */
export const KJ_PER_KG_K_PER_BTU_PER_LB_F = 4.1868;
export const KJ_PER_KG_PER_BTU_PER_LB = KJ_PER_BTU / KG_PER_LB;
export const BTU_PER_FT3_PER_MJ_PER_M3 = CUBIC_METRES_PER_CUBIC_FOOT / (J_PER_BTU / 1_000_000);
export const KG_PER_L_PER_LB_PER_US_GALLON = KG_PER_LB / LITRES_PER_US_GALLON;
export const MG_PER_L_PER_GRAIN_PER_US_GALLON = MG_PER_GRAIN / LITRES_PER_US_GALLON;

/* Flow */
export const L_PER_S_PER_US_GPM = LITRES_PER_US_GALLON / 60;
export const M3_PER_H_PER_US_GPM = LITRES_PER_US_GALLON * 0.06;
export const US_GALLONS_PER_IMPERIAL_GALLON = LITRES_PER_IMPERIAL_GALLON / LITRES_PER_US_GALLON;

/* Temperature */
export const ZERO_CELSIUS_K = 273.15;
export const FAHRENHEIT_DEGREES_PER_KELVIN = 1.8;

/** A temperature point; for a difference see `kelvinDifferenceToFahrenheitDifference`. */
export function celsiusToFahrenheit(temperatureC: Celsius): number {
  return temperatureC * FAHRENHEIT_DEGREES_PER_KELVIN + 32;
}
export function fahrenheitToCelsius(temperatureF: number): Celsius {
  return (temperatureF - 32) / FAHRENHEIT_DEGREES_PER_KELVIN;
}
export function celsiusToKelvin(temperatureC: Celsius): Kelvin {
  return temperatureC + ZERO_CELSIUS_K;
}
export function kelvinToCelsius(temperatureK: Kelvin): Celsius {
  return temperatureK - ZERO_CELSIUS_K;
}
/** A difference never carries the 32: 20 °F of rise is 11.11 K. */
export function kelvinDifferenceToFahrenheitDifference(differenceK: KelvinDifference): number {
  return differenceK * FAHRENHEIT_DEGREES_PER_KELVIN;
}
export function fahrenheitDifferenceToKelvinDifference(differenceF: number): KelvinDifference {
  return differenceF / FAHRENHEIT_DEGREES_PER_KELVIN;
}

export function barToPsi(pressureBar: BarGauge): number {
  return (pressureBar * PA_PER_BAR) / PA_PER_PSI;
}
export function psiToBar(pressurePsi: number): BarGauge {
  return (pressurePsi * PA_PER_PSI) / PA_PER_BAR;
}
export function psiToKpa(pressurePsi: number): number {
  return (pressurePsi * PA_PER_PSI) / PA_PER_KPA;
}
export function kpaToPsi(pressureKpa: number): number {
  return (pressureKpa * PA_PER_KPA) / PA_PER_PSI;
}
export function barToKpa(pressureBar: number): number {
  return (pressureBar * PA_PER_BAR) / PA_PER_KPA;
}
export function kpaToBar(pressureKpa: number): number {
  return (pressureKpa * PA_PER_KPA) / PA_PER_BAR;
}
export function mbarToInWc(pressureMbar: MbarGauge): number {
  return (pressureMbar * PA_PER_MBAR) / PA_PER_IN_WC;
}
export function inWcToMbar(pressureInWc: number): MbarGauge {
  return (pressureInWc * PA_PER_IN_WC) / PA_PER_MBAR;
}
export function inWcToKpa(pressureInWc: number): number {
  return (pressureInWc * PA_PER_IN_WC) / PA_PER_KPA;
}
export function kpaToInWc(pressureKpa: number): number {
  return (pressureKpa * PA_PER_KPA) / PA_PER_IN_WC;
}
export function psiToInWc(pressurePsi: number): number {
  return (pressurePsi * PA_PER_PSI) / PA_PER_IN_WC;
}
export function psiToFtWc(pressurePsi: number): number {
  return (pressurePsi * PA_PER_PSI) / PA_PER_FT_WC;
}
export function ftWcToPsi(pressureFtWc: number): number {
  return (pressureFtWc * PA_PER_FT_WC) / PA_PER_PSI;
}
export function ftWcToKpa(pressureFtWc: number): number {
  return (pressureFtWc * PA_PER_FT_WC) / PA_PER_KPA;
}
export function kpaToFtWc(pressureKpa: number): number {
  return (pressureKpa * PA_PER_KPA) / PA_PER_FT_WC;
}
export function inHgToKpa(pressureInHg: number): number {
  return (pressureInHg * PA_PER_IN_HG) / PA_PER_KPA;
}
export function kpaToInHg(pressureKpa: number): number {
  return (pressureKpa * PA_PER_KPA) / PA_PER_IN_HG;
}

/** Whether the power counts net or gross is the caller's to keep: a conversion does not change it. */
export function kwToBtuPerH(powerKw: number): number {
  return (powerKw * 1000) / W_PER_BTU_PER_H;
}
export function btuPerHToKw(powerBtuPerH: number): number {
  return (powerBtuPerH * W_PER_BTU_PER_H) / 1000;
}
export function kwToMbh(powerKw: number): number {
  return powerKw / KW_PER_MBH;
}
export function mbhToKw(powerMbh: number): number {
  return powerMbh * KW_PER_MBH;
}
/** Both sides at the same temperature and pressure: see `heatingValueAtBase` for a change of base. */
export function mjPerM3ToBtuPerFt3(heatingValueMjPerM3: number): number {
  return heatingValueMjPerM3 * BTU_PER_FT3_PER_MJ_PER_M3;
}
export function btuPerFt3ToMjPerM3(heatingValueBtuPerFt3: number): number {
  return heatingValueBtuPerFt3 / BTU_PER_FT3_PER_MJ_PER_M3;
}
export function mjPerKgToBtuPerLb(heatingValueMjPerKg: number): number {
  return (heatingValueMjPerKg * 1000) / KJ_PER_KG_PER_BTU_PER_LB;
}
export function btuPerLbToMjPerKg(heatingValueBtuPerLb: number): number {
  return (heatingValueBtuPerLb * KJ_PER_KG_PER_BTU_PER_LB) / 1000;
}

export function metresToFeet(lengthM: Metre): number {
  return lengthM / METRES_PER_FOOT;
}
export function feetToMetres(lengthFt: number): Metre {
  return lengthFt * METRES_PER_FOOT;
}
export function mmToInches(lengthMm: number): number {
  return lengthMm / MM_PER_INCH;
}
export function inchesToMm(lengthIn: number): number {
  return lengthIn * MM_PER_INCH;
}
export function litresToUsGallons(volumeL: Litre): number {
  return volumeL / LITRES_PER_US_GALLON;
}
export function usGallonsToLitres(volumeUsGal: number): Litre {
  return volumeUsGal * LITRES_PER_US_GALLON;
}
export function imperialGallonsToLitres(volumeImperialGal: number): Litre {
  return volumeImperialGal * LITRES_PER_IMPERIAL_GALLON;
}
export function cubicFeetToCubicMetres(volumeFt3: number): number {
  return volumeFt3 * CUBIC_METRES_PER_CUBIC_FOOT;
}
export function cubicMetresToCubicFeet(volumeM3: number): number {
  return volumeM3 / CUBIC_METRES_PER_CUBIC_FOOT;
}
export function lPerMinToUsGpm(flowLPerMin: LPerMin): number {
  return flowLPerMin / LITRES_PER_US_GALLON;
}
export function usGpmToLPerMin(flowUsGpm: number): LPerMin {
  return flowUsGpm * LITRES_PER_US_GALLON;
}
export function kgToLb(massKg: number): number {
  return massKg / KG_PER_LB;
}
export function lbToKg(massLb: number): number {
  return massLb * KG_PER_LB;
}
