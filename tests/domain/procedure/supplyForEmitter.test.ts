import { describe, expect, it } from 'vitest';
import { EMITTERS } from '../../../domain/procedure/modelSheet.ts';
import { supplyForEmitter } from '../../../domain/procedure/supplyForEmitter.ts';
import { readShippedSheet, readShippedSheets } from '../../support/shippedSheets.ts';
import { anItem, aStep, tinySheet } from '../../support/tinySheet.ts';

describe('supplyForEmitter', () => {
  const general = readShippedSheet('general-practice-natural-gas.json');

  /** Design supply per emitter: trade tables and design practice (140–180 °F fin-tube, 35–50 °C slab, 65–80 °C primary). */
  it.each([
    ['floor-slab', 35, 50],
    ['panel-radiators', 45, 60],
    ['fin-tube-baseboard', 60, 82],
    ['fan-coil', 45, 60],
    ['hot-water-cylinder', 65, 80],
  ] as const)('%s: %i to %i °C', (emitter, minSupplyC, maxSupplyC) => {
    expect(supplyForEmitter(general, emitter)).toMatchObject({ minSupplyC, maxSupplyC });
  });

  it('makes up no limit where the sheet says nothing', () => {
    expect(supplyForEmitter(tinySheet([aStep('a', [anItem('confirm', 'b')])]), 'fan-coil')).toBeUndefined();
  });

  it('has a row for every emitter in general practice, and each emitter once in every sheet', () => {
    expect(EMITTERS.filter((emitter) => supplyForEmitter(general, emitter) === undefined)).toEqual([]);
    for (const sheet of readShippedSheets()) {
      const emitters = sheet.supplyByEmitter.map((row) => row.emitter);
      expect(new Set(emitters).size).toBe(emitters.length);
    }
  });
});
