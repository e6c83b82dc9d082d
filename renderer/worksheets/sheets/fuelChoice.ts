/** The fuels a worksheet computes with: what a site burns as it is usually taken, and the pure test gases. */
import type { Fuel } from '../../../domain/combustion/fuel.ts';
import { G20, G25, G31, SITE_FUELS } from '../../../domain/combustion/fuels.ts';
import { choice } from '../core/fields.ts';

export const FUEL_CHOICES = {
  'natural-gas': 'natural gas, typical',
  propane: 'propane (LP), HD-5',
  butane: 'butane (LP)',
  'heating-oil': 'light heating oil',
  g20: 'G20: pure methane',
  g25: 'G25: methane with nitrogen',
  g31: 'G31: pure propane',
} as const;

export type FuelChoice = keyof typeof FUEL_CHOICES;

export const FUELS: Readonly<Record<FuelChoice, Fuel>> = { ...SITE_FUELS, g20: G20, g25: G25, g31: G31 };

export const fuelField = choice('Fuel', FUEL_CHOICES, 'natural-gas', { onFile: 'fuel' });
