import { MM_PER_INCH } from '../../quantity/conversions.ts';

export type Tube = {
  /** Stored in records: kind, size, wall or type. */
  readonly key: string;
  readonly label: string;
  readonly innerDiameterMm: number;
  readonly material: 'copper' | 'pex';
  readonly fromMemory?: true;
};

function inches(key: string, label: string, innerDiameterIn: number, material: Tube['material']): Tube {
  return { key, label, innerDiameterMm: innerDiameterIn * MM_PER_INCH, material };
}

function walled(material: Tube['material'], outerMm: number, wallMm: number): Tube {
  const size = `${outerMm}×${wallMm}`;
  const label = `${material === 'copper' ? 'Copper' : 'PEX'} ${size} mm`;
  return { key: `${material}-${outerMm}x${wallMm}`, label, innerDiameterMm: outerMm - 2 * wallMm, material };
}

/**
 * Tubes a heating system is made of, by inner diameter. Volume per length: see `tubeVolume`.
 *
 * Source   copper types L and M: copper tube handbook table (M from memory, ASTM B88); North American PEX: mean inner
 *          diameters of ASTM F876 tables, not the 0.485 in that some lists pair with the volume of 0.475 in;
 *          metric copper: sizes of EN 1057; metric PEX: outer diameter less two walls
 * Checked  tests/checks/hydronics/volumeRows.ts, litres per metre and gallons per foot of every tube
 */
export const TUBES: readonly Tube[] = [
  inches('copper-l-3/8', 'Copper ⅜ in type L', 0.43, 'copper'),
  inches('copper-l-1/2', 'Copper ½ in type L', 0.545, 'copper'),
  { ...inches('copper-m-1/2', 'Copper ½ in type M', 0.569, 'copper'), fromMemory: true },
  inches('copper-l-3/4', 'Copper ¾ in type L', 0.785, 'copper'),
  { ...inches('copper-m-3/4', 'Copper ¾ in type M', 0.811, 'copper'), fromMemory: true },
  inches('copper-l-1', 'Copper 1 in type L', 1.025, 'copper'),
  { ...inches('copper-m-1', 'Copper 1 in type M', 1.055, 'copper'), fromMemory: true },
  inches('copper-l-1-1/4', 'Copper 1¼ in type L', 1.265, 'copper'),
  inches('copper-l-1-1/2', 'Copper 1½ in type L', 1.505, 'copper'),
  inches('pex-3/8', 'PEX ⅜ in', 0.35, 'pex'),
  inches('pex-1/2', 'PEX ½ in', 0.475, 'pex'),
  inches('pex-5/8', 'PEX ⅝ in', 0.574, 'pex'),
  inches('pex-3/4', 'PEX ¾ in', 0.671, 'pex'),
  inches('pex-1', 'PEX 1 in', 0.862, 'pex'),
  walled('copper', 10, 0.6),
  walled('copper', 12, 0.6),
  walled('copper', 15, 0.7),
  walled('copper', 15, 1),
  walled('copper', 22, 0.9),
  walled('copper', 22, 1),
  walled('copper', 28, 0.9),
  walled('copper', 28, 1),
  walled('copper', 35, 1.2),
  walled('pex', 12, 1.7),
  walled('pex', 14, 2),
  walled('pex', 16, 2),
  walled('pex', 17, 2),
  walled('pex', 20, 2),
];

export function findTube(key: string): Tube | undefined {
  return TUBES.find((tube) => tube.key === key);
}
