import { describe, expect, it } from 'vitest';
import { partyTyped } from '../../../renderer/customers/partyForm.ts';

describe('a caller who is not on file', () => {
  it.each([
    ['Lowri Kestrel ', { name: 'Lowri Kestrel' }],
    ['902 555 0111', { phoneTyped: '902 555 0111' }],
    ['(902) 555-0111', { phoneTyped: '(902) 555-0111' }],
    ['+1 902 555 0111', { phoneTyped: '+1 902 555 0111' }],
    ['9 Fathom Street', {}],
    ['TK204417', {}],
  ])('should not lose what was typed to find them: %j', (query, fields) => {
    expect(partyTyped(query)).toEqual(fields);
  });
});
