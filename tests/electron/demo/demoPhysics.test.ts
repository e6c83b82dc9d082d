/**
 * What the demo's script made is held against rules of thumb it does not know: sizes that fit together on every site, and
 * water and gas that agree with them. Figures without a source are common practice.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { modelSheet } from '../../../domain/procedure/modelSheet.ts';
import { recordedRun } from '../../../electron/demo/recordedRun.ts';
import { scenario } from '../../../electron/demo/scenario.ts';
import { APP_ROOT } from '../../support/testCore.ts';

const readJson = (path: string): unknown => JSON.parse(readFileSync(join(APP_ROOT, path), 'utf8'));
const data = scenario.parse(readJson('assets/demo/scenario.json'));
const startup = recordedRun.parse(readJson('assets/demo/startup-run.json'));
const sheets = readdirSync(join(APP_ROOT, 'assets/sheets')).map((name) =>
  modelSheet.parse(readJson(`assets/sheets/${name}`)),
);

/** A pool heater was hung on the meter of a house that it was never meant for. */
const METER_TOO_SMALL = ['site-15', 'site-33'];
/** A bathroom floor by itself takes less than the boiler's lowest fire. */
const ZONE_TOO_SMALL = ['site-7'];

const sites = data.customers.flatMap(({ sites: own, party }) => own.map((one) => ({ ...one, owner: party.name })));
const keys = sites.map(({ key }) => key);
type Site = (typeof sites)[number];
const siteOf = (key: string): Site => sites.find((one) => one.key === key) as Site;
const sheetOf = (sheetId: string | null) => sheets.find((one) => one.sheetId === sheetId);

/** The whole heat of the gas over its heat without the water's: methane 890.6/802.6, propane 2219.2/2043.1 kJ/mol (ISO 6976, 25 °C). */
const GROSS_OVER_NET = { 'natural-gas': 1.11, propane: 1.086 } as const;

function inputKwGross({ gasSupply, appliances }: Site): number {
  return appliances.reduce((sum, { appliance: { ratedInputKw, ratedInputBasis } }) => {
    const ratio = ratedInputBasis === 'net' ? GROSS_OVER_NET[gasSupply.fuel as 'propane'] : 1;
    return sum + (ratedInputKw ?? Number.NaN) * ratio;
  }, 0);
}
const emittersKw = ({ site }: Site): number => site.emitters.reduce((sum, one) => sum + (one.ratedKw ?? Number.NaN), 0);

describe('the sites of the demo', () => {
  it('are as many as the customers have, and not all alike', () => {
    expect(sites.length).toBeGreaterThan(40);
    expect(new Set(sites.map(emittersKw)).size).toBeGreaterThan(15);
    expect(new Set(sites.map(({ gasSupply }) => gasSupply.capacityM3PerH)).size).toBeGreaterThan(4);
    expect(new Set(data.customers.map(({ party }) => party.name)).size).toBe(data.customers.length);
  });

  it.each(keys)('%s: the boilers make what the emitters give off, and not ten times as much', (key) => {
    // 85 % of the gross input reaches the water of the least efficient boiler on the market.
    const outputKw = 0.85 * inputKwGross(siteOf(key));
    expect(outputKw).toBeGreaterThanOrEqual(emittersKw(siteOf(key)));
    expect(outputKw).toBeLessThan(5 * emittersKw(siteOf(key)));
  });

  it.each(keys)('%s: the water is that of its emitters and pipes', (key) => {
    // 6 L/kW for convectors to 23 L/kW for floors (a trade sheet on estimating, ±40 %), boiler content apart.
    const perKw = (siteOf(key).site.systemVolumeL ?? Number.NaN) / emittersKw(siteOf(key));
    expect(perKw).toBeGreaterThan(5);
    expect(perKw).toBeLessThan(27);
  });

  it.each(keys.filter((key) => siteOf(key).gasSupply.kind === 'meter'))('%s: the meter passes everything', (key) => {
    const { gasSupply } = siteOf(key);
    const connectedKw = inputKwGross(siteOf(key)) + gasSupply.loads.reduce((sum, one) => sum + (one.inputKw ?? 0), 0);
    const passesKw = ((gasSupply.capacityM3PerH ?? 0) * (gasSupply.heatingValueMjPerM3 ?? 0)) / 3.6;
    expect(passesKw >= connectedKw).toBe(!METER_TOO_SMALL.includes(key));
  });

  it.each(keys)('%s: every zone takes the lowest fire', (key) => {
    const { site, appliances } = siteOf(key);
    const lowestKw = Math.min(
      ...appliances.map(({ appliance }) => sheetOf(appliance.sheetId)?.appliance.ratedInputMinKw ?? Number.NaN),
    );
    const smallestKw = Math.min(...site.emitters.map(({ ratedKw }) => ratedKw ?? Number.NaN));
    expect(smallestKw >= lowestKw).toBe(!ZONE_TOO_SMALL.includes(key));
  });

  it.each(keys)('%s: height above the sea and of the system are those of a house on that coast', (key) => {
    const { site } = siteOf(key);
    expect(site.altitudeM).toBeGreaterThanOrEqual(0);
    const isPlantRoom = site.label?.endsWith('plant room') === true;
    expect(site.systemHeightM).toBeGreaterThanOrEqual(isPlantRoom ? 6 : 1.5);
    expect(site.systemHeightM).toBeLessThanOrEqual(isPlantRoom ? 14 : 7);
  });

  it('have boilers of a plant room in plant rooms alone, with a meter whose dial suits', () => {
    for (const { site, gasSupply, appliances, key } of sites) {
      const isPlantRoom = site.label?.endsWith('plant room') === true;
      const isLarge = appliances.some(({ appliance }) => (appliance.ratedInputKw ?? 0) > 60);
      expect(isLarge, key).toBe(isPlantRoom);
      if (isLarge) expect(site.buildingKind, key).toBe('commercial');
      if (gasSupply.kind === 'tank')
        expect([gasSupply.capacityM3PerH, gasSupply.dialM3, isLarge], key).toEqual([null, null, false]);
    }
  });

  it('have boilers with the plate of their model: the number in the name, to the nearest step of the range', () => {
    for (const { appliance } of sites.flatMap(({ appliances }) => appliances)) {
      const named = Number(/\d+/.exec(appliance.model)?.[0]);
      expect(Math.abs((appliance.ratedInputKw ?? 0) - named) / named, appliance.model).toBeLessThan(0.06);
    }
  });
});

describe('the pictures', () => {
  it('are another one for every item that asks for one, and there', () => {
    for (const { notes } of data.visits) {
      const files = Object.values(notes?.photos ?? {});
      expect(new Set(files).size, notes?.serial).toBe(files.length);
      for (const name of files) expect(existsSync(join(APP_ROOT, 'assets/demo/photos', name)), name).toBe(true);
    }
    expect(Object.keys(startup.photos).length).toBeGreaterThan(10);
    expect(startup.photos['default']).toBeUndefined();
  });
});

describe('what was read there', () => {
  const runs = [
    ...data.visits.flatMap(({ notes, firstNotes, faultKey }) =>
      notes === null ? [] : [{ notes, firstNotes, faultKey }],
    ),
    { notes: startup, firstNotes: null, faultKey: null },
  ].filter(({ firstNotes, faultKey }) => firstNotes !== null || faultKey === null);
  const siteOfSerial = (serial: string): Site =>
    sites.find(({ appliances }) => appliances.some(({ appliance }) => appliance.serial === serial)) as Site;
  const applianceOf = (serial: string) =>
    siteOfSerial(serial).appliances.find(({ appliance }) => appliance.serial === serial)?.appliance;
  const number = (notes: (typeof runs)[number]['notes'], item: string): number | null => {
    const found = notes.readings[item];
    return found !== undefined && 'text' in found ? Number(found.text) : null;
  };

  it('burns at the meter what the plate says, on the dial that hangs there', () => {
    let timed = 0;
    for (const { notes } of runs) {
      const [turns, seconds, dialM3] = ['meter-turns', 'meter-seconds', 'meter-dial'].map((item) =>
        number(notes, item),
      );
      const { gasSupply } = siteOfSerial(notes.serial);
      if (turns == null || seconds == null || dialM3 == null || gasSupply.kind === 'tank') continue;
      timed += 1;
      expect(dialM3).toBe(gasSupply.dialM3);
      const appliance = applianceOf(notes.serial);
      const plateKw = (appliance?.ratedInputKw ?? 0) * (appliance?.ratedInputBasis === 'net' ? 1.11 : 1);
      const burnedKw = ((turns * dialM3) / seconds) * (gasSupply.heatingValueMjPerM3 ?? 0) * 1000;
      expect(burnedKw / plateKw, notes.serial).toBeGreaterThan(0.97);
      expect(burnedKw / plateKw, notes.serial).toBeLessThan(1.03);
    }
    expect(timed).toBeGreaterThan(20);
  });

  it('has cold water up to the highest emitter, and room under the relief valve', () => {
    for (const { notes } of runs) {
      const cold = number(notes, 'cold-pressure');
      if (cold === null) continue;
      const { site } = siteOfSerial(notes.serial);
      // 0.1 bar a metre, and something left at the top.
      expect(cold, notes.serial).toBeGreaterThan((site.systemHeightM ?? 0) * 0.098 + 0.15);
      expect(number(notes, 'hot-pressure'), notes.serial).toBeLessThan((number(notes, 'relief-setting') ?? 0) - 0.2);
    }
  });

  it('has supply above return, and a cast-iron boiler out of condensing', () => {
    for (const { notes } of runs) {
      const [supply, back] = [number(notes, 'high-supply'), number(notes, 'high-return')];
      if (supply === null || back === null) continue;
      expect(supply, notes.serial).toBeGreaterThan(back + 4);
      // Water of natural gas comes down below about 55 °C.
      if (applianceOf(notes.serial)?.sheetId === 'fennimark-bellows-150')
        expect(back, notes.serial).toBeGreaterThan(54);
    }
  });
});
