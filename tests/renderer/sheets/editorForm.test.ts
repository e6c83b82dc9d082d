import { describe, expect, it } from 'vitest';
import { modelSheet } from '../../../domain/procedure/modelSheet.ts';
import { applySheetEdit, type Json } from '../../../domain/procedure/sheetEdit.ts';
import { blankValue } from '../../../renderer/sheets/editor/blankValue.ts';
import { checkDraft } from '../../../renderer/sheets/editor/checkDraft.ts';
import { entryWords } from '../../../renderer/sheets/editor/entryWords.ts';
import { type FormField, type FormNode, formFieldsOf } from '../../../renderer/sheets/editor/formNode.ts';
import { optionsAt } from '../../../renderer/sheets/editor/optionsAt.ts';
import { SECTIONS } from '../../../renderer/sheets/editor/sections.ts';
import { withFreeKey } from '../../../renderer/sheets/editor/withFreeKey.ts';
import { keyFrom } from '../../../renderer/sheets/StartDraftPanel.tsx';
import { readShippedSheets } from '../../support/shippedSheets.ts';

const sheets = readShippedSheets().map((sheet) => JSON.parse(JSON.stringify(sheet)) as Json);
const fields = formFieldsOf(modelSheet);

describe('the form of a sheet', () => {
  it('has a place for every field of the schema', () => {
    const shown = SECTIONS.flatMap((section) => section.fields.map(({ name }) => name));
    expect(['schema', ...shown].sort()).toEqual(Object.keys(modelSheet.shape).sort());
  });

  it.each(sheets.map((sheet) => [String((sheet as { sheetId: string }).sheetId), sheet]))(
    'has a box for everything in %s, and nothing against it',
    (_name, sheet) => {
      expect(unplaced(sheet, { kind: 'group', fields })).toEqual([]);
      expect(checkDraft(sheet)).toEqual([]);
    },
  );

  it.each(listsIn(fields, []))('says in plain words what a new entry of %s still needs', (_name, path, node) => {
    const sheet = sheets[0] as Json;
    const added = applySheetEdit(sheet, {
      kind: 'insert',
      path: [...path],
      at: 0,
      value: withFreeKey(blankValue(node) ?? {}, sheet),
    });
    if (!added.ok) throw new Error(path.join('.'));
    const problems = checkDraft(added.value);
    expect(problems.length).toBeGreaterThan(0);
    for (const { path: at, words } of problems) {
      expect(at.startsWith(path.join('.'))).toBe(true);
      expect(words).not.toMatch(/expected|invalid|received|undefined|object|\bstring\b/i);
    }
  });

  it('keeps a number that is none, and says so', () => {
    const typed = applySheetEdit(sheets[0] as Json, { kind: 'set', path: ['inputTolerancePct'], value: 'about ten' });
    expect(typed.ok && checkDraft(typed.value)).toEqual([{ path: 'inputTolerancePct', words: 'Not a number.' }]);
  });

  it('names a step that could never open, at the step', () => {
    const [sheet] = sheets;
    const body = sheet as { startup: { key: string; needsClear: string | null; items: { blocks: string[] }[] }[] };
    const firing = body.startup.findIndex((step) => step.needsClear === 'firing');
    const later = applySheetEdit(sheet as Json, {
      kind: 'set',
      path: ['startup', firing - 1, 'after'],
      value: [body.startup[firing]?.key ?? ''],
    });
    const problems = later.ok ? checkDraft(later.value) : [];
    expect(problems[0]).toMatchObject({ path: `startup.${firing - 1}.after` });
    expect(problems[0]?.words).toMatch(/is not an earlier step/);
  });
});

describe('what points elsewhere', () => {
  it('offers earlier steps, firing points, earlier questions and their answers', () => {
    const body: Json = {
      firingPoints: [{ key: 'high', label: 'High fire' }],
      startup: [
        {
          key: 'a',
          title: 'First',
          items: [{ key: 'q', kind: 'choose', label: 'Which?', options: [{ value: 'x', label: 'X' }] }],
        },
        {
          key: 'b',
          title: 'Second',
          items: [{ key: 'r', kind: 'read' }, { onlyFor: { answer: { item: 'q', is: [] } } }],
        },
      ],
    };
    expect(optionsAt(['startup', 1, 'after'], body)).toEqual([{ value: 'a', label: 'First' }]);
    expect(optionsAt(['startup', 1, 'items', 0, 'firingPoint'], body)).toEqual([{ value: 'high', label: 'High fire' }]);
    expect(optionsAt(['startup', 1, 'items', 1, 'onlyFor', 'answer', 'item'], body)).toEqual([
      { value: 'q', label: 'Which?' },
    ]);
    expect(optionsAt(['startup', 1, 'items', 1, 'onlyFor', 'answer', 'is'], body)).toEqual([
      { value: 'x', label: 'X' },
    ]);
    expect(optionsAt(['title'], body)).toBeNull();
  });

  it('gives a copy names of its own, inside it too', () => {
    const body: Json = { steps: [{ key: 'fill' }, { key: 'fill-2' }, { key: 'cold' }] };
    expect(withFreeKey({ key: 'fill', items: [{ key: 'cold' }] }, body)).toEqual({
      key: 'fill-3',
      items: [{ key: 'cold-2' }],
    });
    expect(withFreeKey({ key: '' }, body)).toEqual({ key: 'new' });
  });
});

describe('words', () => {
  it('tell one folded entry from another', () => {
    const limit: Json = { quantity: 'co2DryVolPct', point: 'high', fuel: 'propane', min: 9.7, max: 10.7 };
    expect(entryWords(limit, 1, 'metric')).toBe('CO₂, high, propane (LP), 9.7 to 10.7 %');
    expect(entryWords({ key: 'x', label: '', kind: 'photo' }, 4, 'metric')).toBe('x (photo)');
    expect(entryWords({}, 4, 'metric')).toBe('Entry 4');
  });

  it('make a name for the records from a title', () => {
    expect(keyFrom('  Zerbolt Größe 24 (LP)! ')).toBe('zerbolt-gro-e-24-lp');
    expect(keyFrom('…')).toBe('');
  });
});

/** Values that no field of the form would show. */
function unplaced(value: Json | undefined, node: FormNode, at = ''): readonly string[] {
  if (value === undefined || value === null) return [];
  switch (node.kind) {
    case 'group':
      return unplacedIn(value, node.fields, at);
    case 'list':
      return Array.isArray(value) ? value.flatMap((one, index) => unplaced(one, node.of, `${at}.${index}`)) : [at];
    case 'variants': {
      const tag = (value as Record<string, Json>)[node.tag];
      const found = node.cases.find((one) => one.value === tag);
      return found === undefined ? [at] : unplacedIn(value, found.fields, at, node.tag);
    }
    case 'either':
      return unplacedIn(value, node.cases, at);
    case 'choices':
    case 'lines':
      return Array.isArray(value) ? [] : [at];
    case 'choice':
      return typeof value === 'string' && node.options.includes(value) ? [] : [at];
    default:
      return typeof value === { text: 'string', number: 'number', flag: 'boolean' }[node.kind] ? [] : [at];
  }
}

function unplacedIn(value: Json, known: readonly FormField[], at: string, besides = ''): readonly string[] {
  return Object.entries(value as Record<string, Json>).flatMap(([name, inner]) => {
    if (name === besides) return [];
    const field = known.find((one) => one.name === name);
    return field === undefined ? [`${at}.${name}`] : unplaced(inner, field.node, `${at}.${name}`);
  });
}

function listsIn(
  known: readonly FormField[],
  path: readonly (string | number)[],
): readonly [string, readonly (string | number)[], FormNode][] {
  return known.flatMap(({ name, node }) => {
    const here = [...path, name];
    if (node.kind !== 'list') return [];
    const inner = node.of.kind === 'group' ? listsIn(node.of.fields, [...here, 0]) : [];
    return [[here.join('.'), here, node.of] as const, ...inner].map(
      ([words, at, of]) => [words, at, of] as [string, readonly (string | number)[], FormNode],
    );
  });
}
