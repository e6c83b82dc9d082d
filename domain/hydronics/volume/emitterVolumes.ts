/** Litres of system water per kW of boiler output that a kind of emitter usually brings along. */
export type VolumeEmitter =
  | 'perimeter-or-convectors'
  | 'fan-coils-or-air-handlers'
  | 'steel-panels'
  | 'cast-iron'
  | 'distant-or-large'
  | 'floor'
  | 'small-domestic-or-microbore';

/**
 * Estimates only, ±40 %: a metered fill or a dilution test beats them.
 *
 * Source   water-treatment trade sheet on estimating system volume
 */
export const EMITTER_VOLUMES_L_PER_KW: Record<VolumeEmitter, number> = {
  'perimeter-or-convectors': 6,
  'fan-coils-or-air-handlers': 8,
  'steel-panels': 11,
  'cast-iron': 14,
  'distant-or-large': 20,
  floor: 23,
  'small-domestic-or-microbore': 6,
};
