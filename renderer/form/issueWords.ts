/** What the contract refuses, in words for the person at the field. */
import type { z } from 'zod';

export function issueWords(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return 'Needed.';
    case 'too_small':
      if (issue.origin === 'string') return 'Needed.';
      if (issue.origin === 'array' || issue.origin === 'set') return 'At least one.';
      return issue.inclusive ? `Not less than ${issue.minimum}.` : `More than ${issue.minimum}.`;
    case 'too_big':
      if (issue.origin === 'string') return `Too long: ${issue.maximum} characters at most.`;
      return `Not more than ${issue.maximum}.`;
    case 'invalid_format':
      if (issue.format === 'email') return 'Not an e-mail address.';
      if (issue.format === 'date') return 'Not a day. Example: 4 Jul 2026.';
      return sentence(issue.message);
    case 'invalid_value':
      return 'Choose one.';
    default:
      return sentence(issue.message);
  }
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}${text.endsWith('.') ? '' : '.'}`;
}
