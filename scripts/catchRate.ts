/**
 * Measures, on random runs, how many wrong entries are caught and how many right ones are questioned for nothing:
 * `npm run catch-rate -- [sets] [seed]`. Exits non-zero when a promise is missed.
 */
import { CATCH_TARGET_SHARE, FALSE_ALARM_TARGET_SHARE, measureCatchRate } from '../tests/catchRate/measureCatchRate.ts';

const sets = Number(process.argv[2] ?? 100_000);
const seed = Number(process.argv[3] ?? 1);
const startedMs = performance.now();

const { rows, falseAlarms, falseAlarmsBy, cleanSets } = measureCatchRate({
  seed,
  mistakenSets: sets,
  cleanSets: sets,
  onProgress: (done, of) => {
    if (done > 0 && done % 20_000 === 0) process.stderr.write(`${done} of ${of}\n`);
  },
});

const percent = (part: number, of: number) => (of === 0 ? '   –' : `${((100 * part) / of).toFixed(1).padStart(5)} %`);
console.log(`seed ${seed}: ${sets} sets with one mistake each, ${cleanSets} clean sets\n`);
console.log(
  ' row  mistake                                         injected  catchable   caught where    by its    caught of',
);
console.log(
  '                                                                              catchable   own name          all',
);
for (const one of rows) {
  console.log(
    `${String(one.row).padStart(4)}  ${one.title.padEnd(46)}${String(one.injected).padStart(10)}${percent(one.catchable, one.injected).padStart(11)}` +
      `${percent(one.caughtOfCatchable, one.catchable).padStart(15)}${percent(one.namedOfCatchable, one.catchable).padStart(11)}${percent(one.caught, one.injected).padStart(13)}`,
  );
}
const sum = (of: (one: (typeof rows)[number]) => number) => rows.reduce((total, one) => total + of(one), 0);
const catchShare = sum((one) => one.caughtOfCatchable) / sum((one) => one.catchable);
const worst = rows.reduce((low, one) =>
  one.caughtOfCatchable / one.catchable < low.caughtOfCatchable / low.catchable ? one : low,
);
console.log(
  `\ncaught where catchable: ${percent(
    sum((one) => one.caughtOfCatchable),
    sum((one) => one.catchable),
  )}`,
);
console.log(`worst row: ${worst.row}, ${percent(worst.caughtOfCatchable, worst.catchable)}`);
console.log(
  `caught of all:          ${percent(
    sum((one) => one.caught),
    sum((one) => one.injected),
  )}`,
);
console.log(`false alarms:           ${percent(falseAlarms, cleanSets)}`);
for (const [detail, count] of [...falseAlarmsBy].toSorted((one, other) => other[1] - one[1])) {
  console.log(`   ${String(count).padStart(7)}  ${detail}`);
}
console.log(`\n${((performance.now() - startedMs) / 1000).toFixed(0)} s`);

const isKept =
  falseAlarms / cleanSets <= FALSE_ALARM_TARGET_SHARE &&
  rows.every((one) => one.caughtOfCatchable >= one.catchable * CATCH_TARGET_SHARE);
console.log(
  `${isKept ? 'kept' : 'MISSED'}: every row at least ${CATCH_TARGET_SHARE * 100} % where catchable (all: ${percent(catchShare, 1)}), false alarms at most ${FALSE_ALARM_TARGET_SHARE * 100} %`,
);
process.exitCode = isKept ? 0 : 1;
