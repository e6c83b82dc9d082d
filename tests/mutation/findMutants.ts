/** Every small change to try in one source file: each number 1 % off, each operator another, each comparison at its other edge. */
import { stripTypeScriptTypes } from 'node:module';
import { parseAst } from 'vite';
import { type Node, visit } from './walkTree.ts';

export type Mutant = {
  readonly from: number;
  readonly to: number;
  readonly original: string;
  readonly changed: string;
  readonly kind: 'number' | 'operator';
  readonly line: number;
  /** The line it is on, without the space before it: names a survivor whatever moves above it. */
  readonly lineText: string;
  /** Which of the same original text in that line. */
  readonly nth: number;
};

/** 1 %: below what instruments tell apart, above the printed tolerance of nearly every published value. */
const SHARE = 0.01;

const OTHER_OPERATOR: Readonly<Record<string, string>> = {
  '+': '-',
  '-': '+',
  '*': '/',
  '/': '*',
  '**': '*',
  '<': '<=',
  '<=': '<',
  '>': '>=',
  '>=': '>',
  '===': '!==',
  '!==': '===',
  '&&': '||',
  '||': '&&',
  '??': '&&',
};

export function findMutants(source: string): readonly Mutant[] {
  // Types become spaces: every place in the tree is a place in the source.
  const script = stripTypeScriptTypes(source);
  const found: Omit<Mutant, 'line' | 'lineText' | 'nth'>[] = [];
  visit(parseAst(script), (node) => {
    if (node.type === 'Literal' && typeof node['value'] === 'number') {
      const original = source.slice(node.start, node.end);
      found.push({ from: node.start, to: node.end, original, changed: numberOff(node['value']), kind: 'number' });
    }
    const other = OTHER_OPERATOR[String(node['operator'])];
    if (other !== undefined && (node.type === 'BinaryExpression' || node.type === 'LogicalExpression')) {
      const operator = String(node['operator']);
      const from = script.indexOf(operator, (node['left'] as Node).end);
      found.push({ from, to: from + operator.length, original: operator, changed: other, kind: 'operator' });
    }
  });
  return found
    .filter((mutant) => isJavaScript(applyMutant(script, mutant)))
    .sort((a, b) => a.from - b.from)
    .map((mutant) => placed(mutant, source));
}

export function applyMutant(source: string, mutant: Pick<Mutant, 'from' | 'to' | 'changed'>): string {
  return source.slice(0, mutant.from) + mutant.changed + source.slice(mutant.to);
}

/** `a ?? b || c` without brackets is none: such a change would be noticed by nobody's merit. */
function isJavaScript(script: string): boolean {
  try {
    parseAst(script);
    return true;
  } catch {
    return false;
  }
}

/** Nothing has no 1 %: it becomes a small something. */
function numberOff(value: number): string {
  return value === 0 ? String(SHARE) : String(value * (1 + SHARE));
}

function placed(mutant: Omit<Mutant, 'line' | 'lineText' | 'nth'>, source: string): Mutant {
  const start = source.lastIndexOf('\n', mutant.from - 1) + 1;
  const end = source.indexOf('\n', mutant.from);
  const before = source.slice(start, mutant.from);
  return {
    ...mutant,
    line: source.slice(0, mutant.from).split('\n').length,
    lineText: source.slice(start, end < 0 ? undefined : end).trim(),
    nth: before.split(mutant.original).length - 1,
  };
}
