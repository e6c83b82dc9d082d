/**
 * The fuels the tool knows by name: the European test gases, a typical US pipeline gas, LPG grades and light heating oil.
 *
 * Source   EN 437 (G20, G25, G23, G222, G24, G30, G31); AGA Report No. 8 "Gulf Coast" test gas for NG-US;
 *          HD-5 and OIL-2 are nominal compositions of our own. Typical, never the site's own gas: supplier data wins.
 * Checked  tests/checks/combustion/, most tables
 */
import { unwrap } from '../result.ts';
import type { Fuel, FuelFamily, GasComposition, GasFuel, OilFuel } from './fuel.ts';
import { gasFuel } from './gasFuel.ts';
import { oilFuel } from './oilFuel.ts';

function gas(name: string, family: FuelFamily, molePct: GasComposition): GasFuel {
  return unwrap(gasFuel({ name, family, molePct }));
}

export const G20 = gas('G20', 'natural-gas', { methane: 100 });
export const G25 = gas('G25', 'natural-gas', { methane: 86, nitrogen: 14 });
export const G23 = gas('G23', 'natural-gas', { methane: 92.5, nitrogen: 7.5 });
export const G222 = gas('G222', 'natural-gas', { methane: 77, hydrogen: 23 });
export const G24 = gas('G24', 'natural-gas', { methane: 68, propane: 12, hydrogen: 20 });
export const G30 = gas('G30', 'butane', { nButane: 50, iButane: 50 });
export const G31 = gas('G31', 'propane', { propane: 100 });

/** Stands for a typical US pipeline gas. */
export const NG_US = gas('NG-US', 'natural-gas', {
  methane: 96.5222,
  ethane: 1.8186,
  propane: 0.4596,
  iButane: 0.0977,
  nButane: 0.1007,
  iPentane: 0.0473,
  nPentane: 0.0324,
  nHexane: 0.0664,
  nitrogen: 0.2595,
  carbonDioxide: 0.5956,
});

/** The HD-5 grade allows as little as 90 % propane and as much as 5 % propylene. */
export const HD_5 = gas('HD-5', 'propane', { propane: 95, ethane: 2, propylene: 2, nButane: 1 });

export const OIL_2: OilFuel = unwrap(
  oilFuel({
    name: 'OIL-2',
    family: 'distillate-oil',
    massPct: { carbon: 87, hydrogen: 12.8, sulphur: 0.2, nitrogen: 0, oxygen: 0 },
    hhvMjPerKg: 45.4,
  }),
);

export type SiteFuelKey = 'natural-gas' | 'propane' | 'butane' | 'heating-oil';

/**
 * What a site's fuel is taken for until supplier data says otherwise. Natural gas is NG-US (CO2max 11.86 %, between the
 * 11.7 % of pure methane and the 11.94 % of EPA factors); propane is HD-5, which differs from pure propane by 0.02 %.
 */
export const SITE_FUELS: Readonly<Record<SiteFuelKey, Fuel>> = {
  'natural-gas': NG_US,
  propane: HD_5,
  butane: G30,
  'heating-oil': OIL_2,
};
