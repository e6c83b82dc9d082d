/** Every worksheet from the typed text to the shown text: published examples, and whatever else may be typed. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { UnitSystem } from '../../../domain/quantity/preferredUnit.ts';
import { drawnChart } from '../../../renderer/worksheets/chart/drawnChart.ts';
import type { Evaluated, TypedInputs } from '../../../renderer/worksheets/core/evaluate.ts';
import type { Worksheet } from '../../../renderer/worksheets/core/worksheet.ts';
import { findWorksheet, WORKSHEET_GROUPS, WORKSHEETS } from '../../../renderer/worksheets/worksheets.ts';
import { PUBLISHED_EXAMPLES } from './publishedExamples.ts';

const SYSTEMS: readonly UnitSystem[] = ['metric', 'us'];

function typed(texts: Readonly<Record<string, string>>): TypedInputs {
  return Object.fromEntries(Object.entries(texts).map(([key, text]) => [key, { text }]));
}

function worksheet(key: string): Worksheet {
  const found = findWorksheet(key);
  if (found === undefined) throw new Error(`no worksheet ${key}`);
  return found;
}

/** The number a person reads first: `1.40 to 1.47` is 1.40, `120 ± 2` is 120. */
function shownNumber(text: string): number {
  return Number(text.replaceAll('\u202f', '').replace('\u2212', '-').split(' ')[0]);
}

function lineOf(evaluated: Evaluated, label: string) {
  const line = evaluated.lines.find((one) => one.label === label);
  if (line === undefined) throw new Error(`no line "${label}" among ${evaluated.lines.map((one) => one.label)}`);
  return line;
}

describe('published examples, from box to result', () => {
  it.each(PUBLISHED_EXAMPLES)('$worksheet shows row $row ($kind, $source)', (example) => {
    const evaluated = worksheet(example.worksheet).evaluate(typed(example.typed), example.unitSystem);
    expect(evaluated.problems).toEqual({});
    for (const [label, expected, tolerance, unit] of example.shows) {
      const line = lineOf(evaluated, label);
      // What is shown is rounded: that alone may not fail a row whose tolerance is finer than a last place.
      expect(
        Math.abs(shownNumber(line.text) - expected) <= tolerance + 1e-9,
        `${label}: ${line.text} ${line.because ?? ''}, expected ${expected} ± ${tolerance}`,
      ).toBe(true);
      expect(line.unit).toBe(unit);
    }
  });

  it('has an example for every worksheet, and each with inputs of that worksheet', () => {
    expect(new Set(PUBLISHED_EXAMPLES.map((example) => example.worksheet))).toEqual(
      new Set(WORKSHEETS.map(({ key }) => key)),
    );
    for (const example of PUBLISHED_EXAMPLES) {
      const { fields } = worksheet(example.worksheet);
      for (const [key, text] of Object.entries(example.typed)) {
        const field = fields[key];
        expect(field, `${example.worksheet}.${key}`).toBeDefined();
        if (field?.kind === 'choice') expect(Object.keys(field.options)).toContain(text);
      }
    }
  });
});

describe('what is missing or wrong', () => {
  it('names what a result needs, and works out the others', () => {
    const evaluated = worksheet('combustion').evaluate(typed({ o2DryVolPct: '5' }), 'metric');
    expect(lineOf(evaluated, 'Excess air').because).toBeNull();
    expect(lineOf(evaluated, 'Efficiency, net').because).toBe('needs Flue gas · Intake air');
    expect(lineOf(evaluated, 'CO air-free').because).toBe('needs CO as measured');
  });

  it('takes nothing for zero: an empty worksheet shows no result that rests on an empty box', () => {
    const evaluated = worksheet('gas-rate').evaluate({}, 'us');
    expect(evaluated.lines.filter(({ because }) => because === null)).toEqual([]);
  });

  it('says by the field that a number is outside the formula, in the unit of the reader', () => {
    const evaluated = worksheet('combustion').evaluate(
      typed({ o2DryVolPct: '18', flueGasC: '10 °C', intakeAirC: '60' }),
      'us',
    );
    expect(evaluated.problems['o2DryVolPct']).toEqual({
      kind: 'words',
      words: 'O₂ is 18 %: the formula holds from 0.5 to 15 %.',
    });
    const cold = worksheet('combustion').evaluate(typed({ o2DryVolPct: '5', flueGasC: '50', intakeAirC: '60' }), 'us');
    expect(cold.problems['flueGasC']).toEqual({
      kind: 'words',
      words: 'Flue gas is 50 °F: the formula holds from 68 to 1112 °F.',
    });
  });

  it('does not compute with what can have two meanings, is no number or is over the range', () => {
    for (const text of ['1,234', 'abc', '>4000', '12 bar']) {
      const evaluated = worksheet('combustion').evaluate(typed({ o2DryVolPct: '5', coPpm: text }), 'metric');
      expect(evaluated.problems['coPpm'], text).toBeDefined();
      expect(lineOf(evaluated, 'CO air-free').because, text).toBe('can’t be worked out: CO as measured can’t be read');
    }
  });

  it('tells an input from the rating only where the timing can', () => {
    const clocked = (seconds: string) =>
      lineOf(
        worksheet('gas-rate').evaluate(
          typed({
            meterDialM3: '2',
            meterTurns: '2',
            meterSeconds: seconds,
            heatingValueMjPerM3: '1000',
            ratedInputKw: '120 MBH',
            altitudeRule: 'no-derate',
          }),
          'us',
        ),
        'So the input is',
      ).text;
    expect(clocked('120')).toBe('not to be told apart from the rating by this timing');
    expect(clocked('110')).toBe('above the rating');
    expect(clocked('130')).toBe('below the rating');
  });

  it('says what is wrong with an analysis that is no whole gas, and works nothing out from it', () => {
    const why = (texts: Readonly<Record<string, string>>) =>
      lineOf(worksheet('gas-composition').evaluate(typed(texts), 'metric'), 'Heating value, gross').because;
    expect(why({})).toBe('needs Methane');
    expect(why({ methane: '90', ethane: '5' })).toBe(
      'can’t be worked out: the parts add up to 95.00 %, not to 100: one is missing or misread',
    );
    expect(why({ methane: '0', nitrogen: '100' })).toBe(
      'can’t be worked out: such a mixture does not burn, or leaves no CO₂ to read',
    );
  });

  it('says when more water than three fills has gone in, and of a floor that can’t give what is wanted', () => {
    const water = (filled: string) =>
      lineOf(
        worksheet('water-quality').evaluate(typed({ systemVolumeL: '200', totalFilledL: filled }), 'metric'),
        'So much water so far is',
      ).tone;
    expect(water('600')).toBe('good');
    expect(water('601')).toBe('bad');
    const floor = (load: string) =>
      lineOf(worksheet('emitter-output').evaluate(typed({ floorLoadWPerM2: load }), 'metric'), 'So the floor alone')
        .tone;
    expect(floor('100')).toBe('good');
    expect(floor('105')).toBe('bad');
  });

  it('warns of a pair that belongs to another fuel', () => {
    const pair = (o2: string, co2: string) =>
      lineOf(
        worksheet('combustion').evaluate(typed({ o2DryVolPct: o2, co2DryVolPct: co2 }), 'metric'),
        'O₂ and CO₂ together',
      ).tone;
    expect(pair('4.7', '9.2')).toBe('good');
    expect(pair('9.2', '4.7')).toBe('bad');
  });

  it('never gives a longer time to burn for hotter water', () => {
    const burns = (temperature: string) =>
      lineOf(
        worksheet('hot-water').evaluate(typed({ mixedOutletC: temperature }), 'metric'),
        'Mixed water burns within',
      );
    expect(burns('60').text).toMatch(/^1 s \(child/);
    expect(burns('49').text).toMatch(/^4 min/);
    expect(burns('40').because).toContain('does not mean it can’t hurt');
  });
});

const MOST_FIELDS = Math.max(...WORKSHEETS.map(({ fields }) => Object.keys(fields).length));

describe('whatever is typed', () => {
  it('shows no NaN, no Infinity and no undefined, in either unit system', () => {
    const letters = fc
      .array(fc.constantFrom(...'0123456789.,\'’ -−><:½"°%CFKpsibarLmMBtuh'), { maxLength: 10 })
      .map((all) => all.join(''));
    const plausible = fc
      .double({ min: -50, max: 2000, noNaN: true })
      .map((value) => String(Number(value.toPrecision(3))));
    const small = fc.double({ min: 0, max: 20, noNaN: true }).map((value) => String(Number(value.toPrecision(2))));
    const text = fc.oneof(
      letters,
      plausible,
      small,
      small,
      fc.constantFrom('', '0', '-0', '1e9', '999999999999999999999', '20', '5', '60', '80'),
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...WORKSHEETS),
        fc.constantFrom(...SYSTEMS),
        fc.array(text, { minLength: MOST_FIELDS, maxLength: MOST_FIELDS }),
        fc.array(fc.nat(), { minLength: MOST_FIELDS, maxLength: MOST_FIELDS }),
        (sheet, unitSystem, texts, picks) => {
          const inputs = Object.fromEntries(
            Object.entries(sheet.fields).flatMap(([key, field], index) => {
              const pick = picks[index] ?? 0;
              if (field.kind === 'choice') {
                const options = Object.keys(field.options);
                return [[key, { text: options[pick % options.length] ?? '' }]];
              }
              // One in five keeps its usual figure.
              if (pick % 5 === 0) return [];
              const unit = field.measure.units[pick % field.measure.units.length]?.symbol;
              return [[key, { text: texts[index] ?? '', unit }]];
            }),
          );
          const evaluated = sheet.evaluate(inputs, unitSystem);
          const chart = evaluated.chart === null ? null : drawnChart(evaluated.chart, unitSystem);
          const all = JSON.stringify([evaluated.lines, evaluated.problems, chart]);
          expect(all).not.toMatch(/NaN|Infinity|undefined|null is|\[object/);
          // A number that is no number becomes null in JSON: a drawn point has none.
          if (chart !== null) {
            expect(
              chart.curves
                .flatMap(({ points }) => points)
                .flat()
                .every(Number.isFinite),
            ).toBe(true);
            expect(chart.marks.flatMap(({ at }) => at).every(Number.isFinite)).toBe(true);
          }
          for (const line of evaluated.lines) expect((line.text === '') === (line.because !== null)).toBe(true);
        },
      ),
      { numRuns: 4000 },
    );
  });
});

describe('the list', () => {
  it('has each worksheet once, in a group that is shown, with formula, validity and source', () => {
    expect(new Set(WORKSHEETS.map(({ key }) => key)).size).toBe(WORKSHEETS.length);
    for (const sheet of WORKSHEETS) {
      expect(WORKSHEET_GROUPS).toContain(sheet.group);
      for (const words of [sheet.formula, sheet.valid, sheet.source]) expect(words.length).toBeGreaterThan(0);
    }
  });

  it('asks only for what a choice in use needs', () => {
    for (const { fields } of WORKSHEETS) {
      for (const { onlyFor } of Object.values(fields)) {
        if (onlyFor === undefined) continue;
        const other = fields[onlyFor.field];
        expect(other?.kind).toBe('choice');
        if (other?.kind === 'choice') {
          for (const option of onlyFor.is) expect(Object.keys(other.options)).toContain(option);
        }
      }
    }
  });
});
