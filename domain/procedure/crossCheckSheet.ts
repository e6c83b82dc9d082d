/** Rules that tie parts of a sheet together and that a shape alone cannot say. */
import { findStuckSteps } from './findStuckSteps.ts';
import type { ModelSheet, SheetStep, StepItem } from './modelSheet.ts';

export type SheetProblem = { readonly path: string; readonly message: string };

/** Empty means no rule is broken. */
export function crossCheckSheet(sheet: ModelSheet): readonly SheetProblem[] {
  return [
    ...checkSteps('startup', sheet.startup, sheet),
    ...checkSteps('service', sheet.service, sheet),
    ...checkSteps('repair', sheet.repair ?? [], sheet),
    ...checkParts(sheet),
    ...checkFuels(sheet),
    ...checkSerialPattern(sheet),
  ];
}

function checkSteps(list: string, steps: readonly SheetStep[], sheet: ModelSheet): readonly SheetProblem[] {
  const problems: SheetProblem[] = [];
  const seenSteps = new Set<string>();
  const seenItems = new Map<string, StepItem>();
  for (const [stepIndex, step] of steps.entries()) {
    const stepPath = `${list}.${stepIndex}`;
    if (seenSteps.has(step.key)) {
      problems.push({ path: `${stepPath}.key`, message: `step "${step.key}" is there twice` });
    }
    for (const earlier of step.after) {
      if (!seenSteps.has(earlier)) {
        problems.push({ path: `${stepPath}.after`, message: `"${earlier}" is not an earlier step` });
      }
    }
    seenSteps.add(step.key);
    for (const [itemIndex, item] of step.items.entries()) {
      const itemPath = `${stepPath}.items.${itemIndex}`;
      if (seenItems.has(item.key)) {
        problems.push({ path: `${itemPath}.key`, message: `item "${item.key}" is there twice` });
      }
      if (step.needsClear !== null && item.blocks.includes('firing')) {
        problems.push({
          path: `${itemPath}.blocks`,
          message: 'an item behind a hold point cannot itself block firing',
        });
      }
      problems.push(...checkItem(item, itemPath, sheet, seenItems));
      seenItems.set(item.key, item);
    }
  }
  if (problems.length === 0) {
    for (const stepKey of findStuckSteps(steps)) {
      const stepIndex = steps.findIndex((step) => step.key === stepKey);
      problems.push({
        path: `${list}.${stepIndex}`,
        message: `step "${stepKey}" could never open: what it waits for waits for this step`,
      });
    }
  }
  return problems;
}

function checkItem(
  item: StepItem,
  path: string,
  sheet: ModelSheet,
  earlier: ReadonlyMap<string, StepItem>,
): readonly SheetProblem[] {
  const problems: SheetProblem[] = [];
  if (item.kind === 'series' && !sheet.firingPoints.some((point) => point.key === item.firingPoint)) {
    problems.push({
      path: `${path}.firingPoint`,
      message: `"${item.firingPoint}" is not a firing point of this sheet`,
    });
  }
  if (item.kind === 'choose') {
    for (const [index, option] of item.options.entries()) {
      if (option.leaveFirst === true && option.outcome !== 'stop') {
        problems.push({
          path: `${path}.options.${index}.leaveFirst`,
          message: 'only an answer that stops leaves first',
        });
      }
    }
  }
  if (item.kind === 'parts' && (sheet.parts ?? []).length === 0) {
    problems.push({ path, message: 'asks which parts were changed, and the sheet lists none' });
  }
  if (item.onlyFor?.changedPart !== undefined && ![...earlier.values()].some((one) => one.kind === 'parts')) {
    problems.push({ path: `${path}.onlyFor.changedPart`, message: 'no earlier item asks which parts were changed' });
  }
  const found = item.onlyFor?.foundOutside;
  if (found !== undefined && !isSameReading(item, earlier.get(found))) {
    problems.push({
      path: `${path}.onlyFor.foundOutside`,
      message: `no earlier item "${found}" reads the same quantity at the same point`,
    });
  }
  if (item.kind === 'sign-off' && item.mayBeNotPossible) {
    problems.push({
      path: `${path}.mayBeNotPossible`,
      message: 'a sign-off can never be "not possible": set it to false',
    });
  }
  const condition = item.onlyFor?.answer;
  if (condition !== undefined) {
    const asked = earlier.get(condition.item);
    const values = asked === undefined ? [] : possibleValues(asked);
    for (const value of condition.is) {
      if (!values.includes(value)) {
        problems.push({
          path: `${path}.onlyFor.answer`,
          message: `no earlier item "${condition.item}" that can be answered "${value}"`,
        });
      }
    }
  }
  return problems;
}

function isSameReading(item: StepItem, other: StepItem | undefined): boolean {
  return (
    item.kind === 'read' && other?.kind === 'read' && item.quantity === other.quantity && item.point === other.point
  );
}

function possibleValues(item: StepItem): readonly string[] {
  if (item.kind === 'choose') return item.options.map((option) => option.value);
  if (item.kind === 'confirm') return ['yes', 'no', 'not-applicable'];
  return [];
}

function checkParts(sheet: ModelSheet): readonly SheetProblem[] {
  const seen = new Set<string>();
  return (sheet.parts ?? []).flatMap(({ key }, index) => {
    const isTwice = seen.has(key);
    seen.add(key);
    return isTwice ? [{ path: `parts.${index}.key`, message: `part "${key}" is there twice` }] : [];
  });
}

function checkFuels(sheet: ModelSheet): readonly SheetProblem[] {
  const fuels = new Set(sheet.fuels.map((one) => one.fuel));
  return sheet.limits.flatMap((one, index) =>
    one.fuel !== null && !fuels.has(one.fuel)
      ? [{ path: `limits.${index}.fuel`, message: `"${one.fuel}" is not a fuel of this sheet` }]
      : [],
  );
}

function checkSerialPattern(sheet: ModelSheet): readonly SheetProblem[] {
  if (sheet.appliance.serialPattern === null) return [];
  try {
    new RegExp(sheet.appliance.serialPattern);
    return [];
  } catch {
    return [{ path: 'appliance.serialPattern', message: 'not a regular expression' }];
  }
}
