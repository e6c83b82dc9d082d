/** What values in a sealed record look like. */
import { z } from 'zod';
import { FUELS } from '../../../domain/procedure/modelSheet.ts';
import { commitment } from '../commitment.ts';
import { decimalText } from '../decimalText.ts';

export const id = z.string().min(1).max(100);
export const key = z.string().min(1).max(120);
export const words = z.string().max(4000);
export const sha256 = z.string().regex(/^[0-9a-f]{64}$/, 'SHA-256 as 64 lower-case hexadecimal digits');
export const day = z.iso.date();
export const instant = z.iso.datetime();
export const fuel = z.enum(FUELS);
/** A key of the quantity catalogue, which grows: an old record must stay readable when the catalogue has moved on. */
export const quantity = z.string().regex(/^[a-zA-Z][a-zA-Z0-9]{1,60}$/);
export const personal = commitment.nullable();
export const number = decimalText.nullable();
export const basis = z.strictObject({ kind: z.enum(['maker', 'standard', 'common-practice']), source: words });
