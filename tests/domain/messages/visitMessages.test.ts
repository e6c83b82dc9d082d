/** Of booked visits: when somebody is reminded, and how the time is said. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { builtInWording } from '../../../domain/messages/builtInWordings.ts';
import { unknownFields } from '../../../domain/messages/fillTemplate.ts';
import { MESSAGE_KINDS, MESSAGE_LANGUAGES, WRITTEN_CHANNELS } from '../../../domain/messages/messageKinds.ts';
import { visitWindowText } from '../../../domain/messages/visitWindowText.ts';
import { appointmentReminderOn } from '../../../domain/service/appointmentCadence.ts';

describe('the reminder of a booked visit', () => {
  // Three days before, the day before, the same morning, over the end of February in a leap year.
  it.each([
    ['2028-02-26', null],
    ['2028-02-27', '2028-02-27'],
    ['2028-02-28', '2028-02-27'],
    ['2028-02-29', '2028-02-29'],
    ['2028-03-01', '2028-03-01'],
    ['2028-03-02', null],
  ])('on %s is the one of %s for a visit on 1 March 2028', (today, sendOn) => {
    expect(appointmentReminderOn('2028-03-01', today)).toBe(sendOn);
  });
});

describe('the time of a visit', () => {
  it.each([
    [{ plannedFrom: '09:00', plannedTo: '12:00', startMin: 540 }, 'between 09:00 and 12:00'],
    [{ plannedFrom: '09:00', plannedTo: null, startMin: 600 }, 'at 09:00'],
    [{ plannedFrom: null, plannedTo: null, startMin: 545 }, 'at 09:05'],
    [{ plannedFrom: null, plannedTo: null, startMin: null }, null],
  ])('%j is %s', (visit, text) => {
    expect(visitWindowText(visit, 'en')).toBe(text);
  });
});

describe('the wordings that come with the program', () => {
  it('use no field that does not exist, in any language and channel', () => {
    for (const kind of MESSAGE_KINDS)
      for (const language of MESSAGE_LANGUAGES)
        for (const channel of WRITTEN_CHANNELS)
          expect(unknownFields(builtInWording(kind, language, channel))).toEqual([]);
  });

  it('use the same fields in every language', () => {
    const fieldsOf = (text: string): readonly string[] => [...new Set(text.match(/\{\{\w+\}\}/gu) ?? [])].toSorted();
    for (const kind of MESSAGE_KINDS)
      for (const channel of WRITTEN_CHANNELS) {
        const [first, ...others] = MESSAGE_LANGUAGES.map((language) =>
          fieldsOf(builtInWording(kind, language, channel).body),
        );
        for (const other of others) expect(other).toEqual(first);
      }
  });

  it('say nothing of a due day that is untrue once it has gone by', () => {
    for (const language of MESSAGE_LANGUAGES)
      for (const channel of WRITTEN_CHANNELS) {
        const { body } = builtInWording('service-due', language, channel);
        expect(body, `${language}, ${channel}`).toContain('{{dueOn}}');
        expect(body, `${language}, ${channel}`).not.toMatch(/(is|will be|fall|falls) due|est prévu|será/u);
      }
  });
});
