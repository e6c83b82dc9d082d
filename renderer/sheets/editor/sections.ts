/** The parts of the editor, each with the fields of the sheet it shows. A field that no part claims is under "More". */
import { modelSheet } from '../../../domain/procedure/modelSheet.ts';
import { type FormField, formFieldsOf } from './formNode.ts';

export type Section = {
  readonly key: string;
  readonly title: string;
  readonly fields: readonly FormField[];
};

const CLAIMED: readonly (readonly [key: string, title: string, fields: readonly string[]])[] = [
  [
    'head',
    'What it covers',
    ['title', 'maker', 'models', 'revision', 'issuedOn', 'sheetId', 'appliance', 'fuels', 'startupBy'],
  ],
  ['readings', 'Firing points and steadiness', ['firingPoints', 'steady', 'inputTolerancePct', 'lapseHours']],
  ['limits', 'Limits', ['limits', 'relations']],
  ['system', 'Altitude, emitters, settings', ['altitude', 'supplyByEmitter', 'factoryDefaults']],
  ['startup', 'Startup, step by step', ['startup']],
  ['service', 'Annual service, step by step', ['service']],
  ['repair', 'Repair, step by step', ['repair']],
  ['cover', 'Cover and registration', ['cover']],
];
/** Says which format the file is of: nothing to write. */
const FIXED = 'schema';

export const SECTIONS: readonly Section[] = makeSections(formFieldsOf(modelSheet));

export function sectionOfPath(path: string): Section | undefined {
  const [top] = path.split('.');
  return SECTIONS.find(({ fields }) => fields.some(({ name }) => name === top));
}

function makeSections(all: readonly FormField[]): readonly Section[] {
  const claimed = CLAIMED.map(([key, title, names]) => ({
    key,
    title,
    fields: names.flatMap((name) => all.filter((field) => field.name === name)),
  }));
  const taken = new Set(CLAIMED.flatMap(([, , names]) => names));
  const rest = all.filter(({ name }) => name !== FIXED && !taken.has(name));
  return rest.length === 0 ? claimed : [...claimed, { key: 'more', title: 'More', fields: rest }];
}
