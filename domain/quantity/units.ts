/**
 * Unit-carrying number types. A plain number may be given where a typed one is asked for, but a value that already
 * carries a unit cannot pass for another: a `Celsius` is no `KelvinDifference`, a gauge pressure no absolute one.
 */

declare const unit: unique symbol;
type InUnit<U extends string> = number & { readonly [unit]?: U };

/** A temperature point. */
export type Celsius = InUnit<'°C'>;
/** A temperature point on the absolute scale. */
export type Kelvin = InUnit<'K'>;
/** A temperature difference: never gains or loses 32 or 273.15 in a conversion. */
export type KelvinDifference = InUnit<'ΔK'>;
/** Pressure above the surrounding air. */
export type BarGauge = InUnit<'bar gauge'>;
export type MbarGauge = InUnit<'mbar gauge'>;
/** Pressure above vacuum. */
export type KpaAbs = InUnit<'kPa abs'>;
export type MpaAbs = InUnit<'MPa abs'>;
/** Share of the dry flue gas by volume. */
export type DryVolPct = InUnit<'% vol dry'>;
/** Parts per million of the dry flue gas, as measured. */
export type PpmDry = InUnit<'ppm dry'>;
/** Parts per million with the excess air computed away. */
export type PpmAirFree = InUnit<'ppm air-free'>;
/** Power counted with the water vapour condensed (higher heating value). */
export type KwGross = InUnit<'kW gross'>;
/** Power counted with the water vapour uncondensed (lower heating value). */
export type Kw = InUnit<'kW'>;
export type LPerMin = InUnit<'L/min'>;
export type M3PerH = InUnit<'m³/h'>;
export type Metre = InUnit<'m'>;
export type Litre = InUnit<'L'>;
export type Seconds = InUnit<'s'>;
/** Excess-air ratio λ: actual air over theoretical air. */
export type Lambda = InUnit<'λ'>;
export type Percent = InUnit<'%'>;
