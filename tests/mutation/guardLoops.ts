/** Gives every loop of a source an end: a change may make one run for ever, and nothing outside can stop it in its own thread. */
import { stripTypeScriptTypes } from 'node:module';
import { parseAst } from 'vite';
import { type Node, visit } from './walkTree.ts';

/** Far more turns than any test takes. */
const MOST_TURNS = 20_000_000;
const GUARD = `if (++globalThis.loopTurns > ${MOST_TURNS}) throw new Error('this loop has no end');`;
const LOOPS = new Set(['ForStatement', 'WhileStatement', 'DoWhileStatement', 'ForOfStatement', 'ForInStatement']);

export function guardLoops(source: string): string {
  const bodies: number[] = [];
  visit(parseAst(stripTypeScriptTypes(source)), (node) => {
    const body = node['body'] as Node | undefined;
    if (LOOPS.has(node.type) && body?.type === 'BlockStatement') bodies.push(body.start + 1);
  });
  const guarded = bodies
    .sort((a, b) => b - a)
    .reduce((text, at) => `${text.slice(0, at)} ${GUARD}${text.slice(at)}`, source);
  return `globalThis.loopTurns = 0;${guarded}`;
}
