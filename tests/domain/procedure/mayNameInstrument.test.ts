import { describe, expect, it } from 'vitest';
import { mayNameInstrument } from '../../../domain/procedure/failedTest.ts';
import { readShippedSheets } from '../../support/shippedSheets.ts';

describe('mayNameInstrument', () => {
  it('asks of a test what it was made with, and of a plate or a notice nothing', () => {
    for (const sheet of readShippedSheets()) {
      const named = sheet.startup.flatMap((step) => step.items.filter((item) => mayNameInstrument(item, step)));
      const keys = named.map(({ key }) => key);
      expect(keys).toContain('spillage');
      expect(keys).toContain('tightness-result');
      for (const read of ['plate-fuel', 'recalls', 'earlier-warnings']) expect(keys).not.toContain(read);
    }
  });
});
