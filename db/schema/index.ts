/** Every table of the store. */
export * from './dues.ts';
export * from './log.ts';
export * from './office.ts';
export * from './people.ts';
export * from './places.ts';
export * from './planning.ts';
export * from './records.ts';
export * from './runs.ts';
export * from './sheets.ts';
export * from './work.ts';
