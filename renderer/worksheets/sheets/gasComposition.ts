/** A gas from the supplier's analysis: its heating values, Wobbe index, and what its flue gas reads. */
import { excessAirFromO2 } from '../../../domain/combustion/airRatio.ts';
import type { CompositionError, GasComposition } from '../../../domain/combustion/fuel.ts';
import { GAS_COMPONENT_KEYS, type GasComponentKey } from '../../../domain/combustion/gasComponents.ts';
import { gasFuel } from '../../../domain/combustion/gasFuel.ts';
import { type GasProperties, gasProperties } from '../../../domain/combustion/gasProperties.ts';
import { co2FromO2 } from '../../../domain/combustion/o2Co2.ts';
import {
  EN_437_STATE,
  type ReferenceState,
  US_14_73_PSIA_STATE,
  US_14_696_PSIA_STATE,
} from '../../../domain/combustion/referenceState.ts';
import { formatNumber } from '../../../domain/quantity/formatQuantity.ts';
import { assertNever, ok } from '../../../domain/result.ts';
import { type NumberField, number, reading } from '../core/fields.ts';
import { numberLine } from '../core/line.ts';
import { HEATING_VALUE, PERCENT_FINE, PLAIN, SHARE } from '../core/measures.ts';
import { said, work } from '../core/worked.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { type VolumeBase, volumeBaseField } from './volumeBaseChoice.ts';

const LABELS: Readonly<Record<GasComponentKey, string>> = {
  methane: 'Methane',
  ethane: 'Ethane',
  propane: 'Propane',
  nButane: 'n-Butane',
  iButane: 'i-Butane',
  nPentane: 'n-Pentane',
  iPentane: 'i-Pentane',
  nHexane: 'Hexane and heavier',
  propylene: 'Propylene',
  hydrogen: 'Hydrogen',
  carbonMonoxide: 'Carbon monoxide',
  nitrogen: 'Nitrogen',
  carbonDioxide: 'Carbon dioxide',
  oxygen: 'Oxygen',
};

const REFERENCE: Readonly<Record<VolumeBase, ReferenceState>> = {
  'europe-15': EN_437_STATE,
  'us-14-73': US_14_73_PSIA_STATE,
  'us-14-696': US_14_696_PSIA_STATE,
};

/** An analysis lists what is in the gas: the 0 stands in the box, to be seen. Methane is asked for. */
function share(key: GasComponentKey): NumberField {
  return number(LABELS[key], SHARE, [0, 100], key === 'methane' ? {} : { usual: '0' });
}

export const gasComposition = defineWorksheet({
  key: 'gas-composition',
  title: 'A gas by its analysis',
  answers: 'Heating values, Wobbe index and density of a gas from its parts, and what its flue gas reads.',
  group: 'Gas',
  caution:
    'A boiler burns the gas on its plate. Another gas, or hydrogen mixed in, is for the maker, the supplier and licensed people.',
  fields: {
    methane: share('methane'),
    ethane: share('ethane'),
    propane: share('propane'),
    nButane: share('nButane'),
    iButane: share('iButane'),
    nPentane: share('nPentane'),
    iPentane: share('iPentane'),
    nHexane: share('nHexane'),
    propylene: share('propylene'),
    hydrogen: share('hydrogen'),
    carbonMonoxide: share('carbonMonoxide'),
    nitrogen: share('nitrogen'),
    carbonDioxide: share('carbonDioxide'),
    oxygen: share('oxygen'),
    state: volumeBaseField('Per volume at'),
    o2DryVolPct: reading('o2DryVolPct', {
      label: 'O₂ in the flue',
      help: 'If the CO₂ that belongs to it is asked for.',
    }),
  },
  workOut({ state, o2DryVolPct, ...shares }) {
    const molePct = work(shares, ok<GasComposition>);
    const fuel = work({ molePct }, (known) => {
      // The family chooses published bands for other worksheets; nothing here asks for it.
      const made = gasFuel({ name: 'by analysis', family: 'natural-gas', molePct: known.molePct });
      return made.ok ? made : said(compositionWords(made.error));
    });
    const properties = work({ fuel }, (known) => gasProperties({ fuel: known.fuel, state: REFERENCE[state] }));
    const property = (key: keyof GasProperties) => work({ properties }, (known) => ok(known.properties[key]));
    return {
      lines: [
        numberLine(
          'The parts add up to',
          { ...SHARE, decimals: 2 },
          work({ molePct }, (known) => ok(GAS_COMPONENT_KEYS.reduce((sum, key) => sum + (known.molePct[key] ?? 0), 0))),
        ),
        numberLine('Heating value, gross', HEATING_VALUE, property('hhvMjPerM3'), { main: true }),
        numberLine('Heating value, net', HEATING_VALUE, property('lhvMjPerM3'), { main: true }),
        numberLine('Wobbe index, gross', HEATING_VALUE, property('wobbeGrossMjPerM3'), { main: true }),
        numberLine('Wobbe index, net', HEATING_VALUE, property('wobbeNetMjPerM3')),
        numberLine('Density against air', { ...PLAIN, decimals: 3 }, property('relativeDensity')),
        numberLine(
          'Highest CO₂ of its flue gas',
          { ...PERCENT_FINE, decimals: 2 },
          work({ fuel }, (known) => ok(known.fuel.co2MaxDryVolPct)),
          { main: true },
        ),
        numberLine(
          'Air it needs, volumes per volume',
          { ...PLAIN, decimals: 2 },
          work({ fuel }, (known) => ok(known.fuel.theoreticalAirMol)),
        ),
        numberLine('CO₂ that belongs to this O₂', PERCENT_FINE, work({ fuel, o2DryVolPct }, co2FromO2), {
          extra: true,
        }),
        numberLine('Excess air at this O₂', PERCENT_FINE, work({ fuel, o2DryVolPct }, excessAirFromO2), {
          extra: true,
        }),
      ],
    };
  },
  formula: [
    'heat per mole = Σ share · heat of the part; net = gross − water · latent heat; per volume = heat / (Z · R · T / p)',
    'Wobbe = heating value / √(density against air); highest CO₂ = CO₂ / dry flue gas without excess air',
  ],
  valid: [
    'Shares of volume (mole) as an analysis prints them, together 100 ± 0.1 %: not the liquid volume of a delivery note.',
    'Dry gas, complete combustion; a gas without carbon has no CO₂ to read.',
  ],
  source: ['ISO 6976:2016 clauses 5 to 10; EN 437 reference conditions; mass balance.'],
});

function compositionWords(error: CompositionError): string {
  switch (error.code) {
    case 'composition-share-out-of-range':
      return `${error.component} is ${formatNumber(error.pct, 2)} %: a share lies between 0 and 100 %`;
    case 'composition-does-not-add-up':
      return `the parts add up to ${formatNumber(error.sumPct, 2)} %, not to 100: one is missing or misread`;
    case 'composition-does-not-burn':
      return 'such a mixture does not burn, or leaves no CO₂ to read';
    default:
      return assertNever(error);
  }
}
