import { describe, expect, it } from 'vitest';
import { LETTER_WORDINGS } from '../../../domain/messages/letterWordings.ts';

describe('the wordings of letters', () => {
  it('should not go on in lower case after the salutation: the customer would read half a sentence', () => {
    const openings = Object.values(LETTER_WORDINGS).flatMap((languages) =>
      Object.values(languages).map(({ body }) => body.split('\n\n')[1] ?? ''),
    );
    expect(openings.filter((opening) => !/^(\{\{|[\p{Lu}¿¡])/u.test(opening))).toEqual([]);
  });
});
