/** A new load on an old meter, as it happened: 335 000 Btu/h in four appliances on a meter that passes 250 ft³/h. */
import { describe, expect, it } from 'vitest';
import { gasLoadGaps } from '../../renderer/sites/GasLoadGaps.tsx';
import { emptyGas, type GasForm, loadBalance } from '../../renderer/sites/gasForm.ts';

const form: GasForm = {
  ...emptyGas('us'),
  capacityM3PerH: { text: '250', unit: 'ft³' },
  heatingValueMjPerM3: { text: '1000', unit: 'Btu/ft³' },
  loads: [200_000, 50_000, 45_000, 40_000].map((input) => ({
    rowId: String(input),
    name: String(input),
    inputKw: { text: String(input), unit: 'Btu/h' },
    applianceId: '',
  })),
};

describe('loadBalance', () => {
  it('should find 335 ft³/h on a meter good for 250: 134 %', () => {
    const balance = loadBalance(form);
    expect(balance).not.toBeNull();
    if (balance === null) return;
    expect(balance.loadKw / balance.capacityKw).toBeCloseTo(335 / 250, 9);
  });

  it('should name a load whose input is not known, and count it neither as zero nor at all', () => {
    const [first, ...others] = form.loads;
    if (first === undefined) throw new Error('the case has loads');
    const unknown = { ...first, name: 'water heater', inputKw: { text: '', unit: 'Btu/h' } };
    const balance = loadBalance({ ...form, loads: [unknown, ...others] });
    expect(balance?.unknownLoads).toEqual(['water heater']);
    if (balance === null) return;
    expect(balance.loadKw / balance.capacityKw).toBeCloseTo(135 / 250, 9);
    expect(loadBalance({ ...form, loads: [unknown] })).toBeNull();
  });

  it('should say nothing without the meter’s capacity, and nothing for a tank', () => {
    expect(loadBalance({ ...form, capacityM3PerH: { text: '', unit: 'ft³' } })).toBeNull();
    expect(loadBalance({ ...form, kind: 'tank' })).toBeNull();
  });
});

describe('gasLoadGaps', () => {
  it('should name an appliance that stands there and is not counted', () => {
    const appliance = {
      applianceId: 'a1',
      serial: 'S-1',
      maker: 'Maker',
      model: 'Model',
      siteId: null,
      street: null,
      city: null,
      customerId: null,
      customerName: null,
      sheetId: null,
      openMakeSafes: 0,
      openNotices: [],
      startedOn: null,
    };
    const gasSupply = {
      kind: 'meter' as const,
      fuel: 'natural-gas' as const,
      number: null,
      dialM3: null,
      compensation: null,
      capacityM3PerH: 7,
      regulator: null,
      nominalMbarG: null,
      tankVolumeL: null,
      heatingValueMjPerM3: 38,
      heatingValueTyped: null,
      heatingValueSource: 'bill',
      heatingValueOn: null,
      loads: [],
    };
    expect(gasLoadGaps({ gasSupply, appliances: [appliance] })).toEqual(['Maker Model, S-1, is not counted.']);
    const counted = { ...gasSupply, loads: [{ name: 'boiler', inputKw: 20, applianceId: 'a1' }] };
    expect(gasLoadGaps({ gasSupply: counted, appliances: [appliance] })).toEqual([]);
    const unknown = { ...counted, loads: [...counted.loads, { name: 'range', inputKw: null, applianceId: null }] };
    expect(gasLoadGaps({ gasSupply: unknown, appliances: [appliance] })).toEqual([
      'range is connected, its input is not known.',
    ]);
    expect(gasLoadGaps({ gasSupply: null, appliances: [appliance] })).toHaveLength(1);
  });
});
