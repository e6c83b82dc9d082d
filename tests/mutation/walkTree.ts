/** A syntax tree, node by node. */
export type Node = { readonly type: string; readonly start: number; readonly end: number } & Record<string, unknown>;

export function visit(value: unknown, onNode: (node: Node) => void): void {
  if (Array.isArray(value)) for (const one of value) visit(one, onNode);
  else if (isNode(value)) {
    onNode(value);
    for (const [key, inner] of Object.entries(value)) if (key !== 'type') visit(inner, onNode);
  }
}

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && 'type' in value;
}
