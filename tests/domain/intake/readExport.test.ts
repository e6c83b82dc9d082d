import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ExportMapping } from '../../../domain/intake/exportMapping.ts';
import { exportTable } from '../../../domain/intake/exportTable.ts';
import { proposeMapping } from '../../../domain/intake/proposeMapping.ts';
import { readExport } from '../../../domain/intake/readExport.ts';
import { readExportCell } from '../../../domain/intake/readExportCell.ts';
import { readExportTime } from '../../../domain/intake/readExportTime.ts';

const HALIFAX = { timeZone: 'America/Halifax', day: '2026-03-02' };
const cells = (text: string, mark: string) => text.split('\n').map((line) => line.split(mark));

describe('exportTable', () => {
  it('finds the headings below a preamble, with the units in a line of their own', () => {
    const table = exportTable(
      cells(
        'Flue gas log;;;\nSerial no.;A-1001;;\nTime;O2;CO;T flue\n;%;ppm;°C\n10:01;5,2;18;61\n10:02;5,1;>4000;62',
        ';',
      ),
    );
    expect(table).toEqual({
      headings: ['Time', 'O2', 'CO', 'T flue'],
      units: [null, '%', 'ppm', '°C'],
      rows: [
        ['10:01', '5,2', '18', '61'],
        ['10:02', '5,1', '>4000', '62'],
      ],
    });
  });

  it('takes the unit out of a heading', () => {
    const table = exportTable(cells('O2 [%],CO (ppm)\n5.2,18', ','));
    expect(table?.units).toEqual(['%', 'ppm']);
  });

  it('reads a list of names and values, and begins a new set when a name comes again', () => {
    const table = exportTable(cells('Fuel\tNatural gas\nO2\t5.2\t%\nCO\t18\tppm\nO2\t5.1\t%\nCO\t17\tppm', '\t'));
    expect(table).toMatchObject({
      headings: ['Fuel', 'O2', 'CO'],
      units: [null, '%', 'ppm'],
      rows: [
        ['Natural gas', '5.2', '18'],
        ['', '5.1', '17'],
      ],
    });
  });

  it('finds nothing in prose or noise, and never throws', () => {
    expect(exportTable([['Dear customer'], ['your boiler was serviced']])).toBeNull();
    fc.assert(
      fc.property(fc.array(fc.array(fc.string())), (noise) => {
        const table = exportTable(noise);
        if (table !== null) for (const row of table.rows) expect(row).toHaveLength(table.headings.length);
      }),
    );
  });
});

describe('readExportCell', () => {
  const value = (cell: string, sign: ExportMapping['decimalSign'] = null) => {
    const read = readExportCell('coPpm', cell, 'ppm', sign);
    return read?.ok ? [read.value.comparator, read.value.valueOwn] : read;
  };
  it('keeps an over-range value as over its range', () => expect(value('>4000')).toEqual(['>', 4000]));
  it('asks about 1,234 until the decimal sign is known', () => {
    expect(value('1,234')).toMatchObject({ ok: false, error: { code: 'ambiguous' } });
    expect(value('1,234', 'point')).toEqual(['=', 1234]);
    expect(value('1,234', 'comma')).toEqual(['=', 1.234]);
    expect(value('1.234,5', 'comma')).toEqual(['=', 1234.5]);
  });
  it.each(['', '-', '---', ' -- ', 'n/a', '....'])('takes %j for nothing, never for zero', (cell) => {
    expect(value(cell)).toBeNull();
  });
  it('keeps the text as it stands in the file', () => {
    expect(readExportCell('o2DryVolPct', ' 5,2 ', '%', 'comma')).toMatchObject({ value: { typedText: '5,2' } });
  });
});

describe('readExportTime', () => {
  const at = (text: string, dayOrder: ExportMapping['dayOrder'] = null) =>
    readExportTime(text, { ...HALIFAX, dayOrder });
  it.each([
    ['10:01', '2026-03-02T14:01:00.000Z'],
    ['2:05:09 PM', '2026-03-02T18:05:09.000Z'],
    ['12:00 am', '2026-03-02T04:00:00.000Z'],
    ['01.03.26 10:01:30', '2026-03-01T14:01:30.000Z'],
    ['2026-03-01 10:01', '2026-03-01T14:01:00.000Z'],
    ['2026-03-01T10:01:00+01:00', '2026-03-01T09:01:00.000Z'],
    ['03/25/2026 10:01', '2026-03-25T13:01:00.000Z'],
  ])('reads %j as %s in Halifax', (text, instant) => expect(at(text)).toEqual({ ok: true, value: instant }));
  it('asks for the order of 03/04', () => {
    expect(at('03/04/2026 10:01')).toMatchObject({ error: { code: 'day-order-unknown' } });
    expect(at('03/04/2026 10:01', 'day-first')).toMatchObject({ value: '2026-04-03T13:01:00.000Z' });
    expect(at('03/04/2026 10:01', 'month-first')).toMatchObject({ value: '2026-03-04T14:01:00.000Z' });
  });
  it.each(['25:01', 'soon', '32.01.2026 10:00', '13:00 pm', '2026-13-01T10:00Z'])('does not take %j', (text) => {
    expect(at(text)).toMatchObject({ ok: false, error: { code: 'not-a-time' } });
  });
});

describe('readExport', () => {
  it('reads by the mapping: a day and a time in two columns, an unmapped column left alone', () => {
    const table = exportTable(
      cells('Date;Time;O2;CO;Eff\n02.03.2026;10:01;5,2;>4000;97,1\n02.03.2026;10:02;---;18;97,0', ';'),
    );
    if (table === null) throw new Error('a table expected');
    const rows = readExport(table, proposeMapping(table, null), HALIFAX);
    expect(rows[0]).toMatchObject({
      measuredAt: { value: '2026-03-02T14:01:00.000Z' },
      values: [
        { quantity: 'o2DryVolPct', read: { value: { valueOwn: 5.2, comparator: '=' } } },
        { quantity: 'coPpm', read: { value: { valueOwn: 4000, comparator: '>', typedText: '>4000' } } },
      ],
    });
    expect(rows[1]?.values.map((one) => one.quantity)).toEqual(['coPpm']);
  });

  it('knows a sign with its unit behind it, and leaves alone what is in a unit it does not have', () => {
    const table = exportTable(cells('Time;O2 %;CO2 %;CO ppm;CO mg/m³;T-flue °C\n10:01;5,2;8,9;18;22;61', ';'), null);
    if (table === null) throw new Error('no table');
    expect(
      proposeMapping(table, null).columns.map((one) => (one.means === 'quantity' ? one.quantity : one.means)),
    ).toEqual(['time', 'o2DryVolPct', 'co2DryVolPct', 'coPpm', 'nothing', 'nothing']);
  });

  it('uses what was kept for the instrument, wherever the column now stands', () => {
    const kept: ExportMapping = {
      columns: [{ heading: 'TF', means: 'quantity', quantity: 'flueGasC', unit: '°F' }],
      decimalSign: 'point',
      dayOrder: null,
    };
    const table = exportTable(cells('CO,TF\n18,142', ','));
    if (table === null) throw new Error('a table expected');
    const [row] = readExport(table, proposeMapping(table, kept), HALIFAX);
    expect(row?.values.find((one) => one.quantity === 'flueGasC')?.read).toMatchObject({ value: { unit: '°F' } });
  });
});
