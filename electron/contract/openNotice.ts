/** A notice that stands open against an appliance, as the domain reads it from the files. */
import type { OpenNotice } from '../../domain/recalls/openNotices.ts';
import { domainValue } from './operation.ts';

export const openNotice = domainValue<OpenNotice>();
