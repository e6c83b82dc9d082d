import { describeCheckRows } from '../checkRow.ts';
import { glycolLibraryRows, glycolRows, glycolTableRows } from './glycolRows.ts';
import { waterPropertyRows } from './waterPropertyRows.ts';
import { waterRows } from './waterRows.ts';

describeCheckRows('water: IF97, fits, boiling points', waterRows, { published: 10, computed: 7 });
describeCheckRows('water: property table', waterPropertyRows, { published: 2, computed: 98 });
describeCheckRows('glycol', [...glycolRows, ...glycolTableRows, ...glycolLibraryRows], { published: 78, computed: 77 });
