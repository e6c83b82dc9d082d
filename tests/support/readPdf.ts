/** A PDF as an independent reader sees it. */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export type ReadPdf = {
  readonly pages: readonly string[];
  readonly title: string;
  readonly language: string | null;
  readonly isMarked: boolean;
  readonly attachments: readonly string[];
  /** How often each structure type occurs. */
  readonly roles: ReadonlyMap<string, number>;
  readonly figuresWithoutAlt: number;
};

type TreeNode = { readonly role?: string; readonly alt?: string; readonly children?: readonly unknown[] };

export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0 });
  const pdf = await task.promise;
  const pages: string[] = [];
  const roles = new Map<string, number>();
  let figuresWithoutAlt = 0;
  const count = (node: TreeNode): void => {
    if (node.role !== undefined) roles.set(node.role, (roles.get(node.role) ?? 0) + 1);
    if (node.role === 'Figure' && !node.alt) figuresWithoutAlt += 1;
    for (const child of node.children ?? []) if (isNode(child)) count(child);
  };
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    const content = await page.getTextContent();
    pages.push(content.items.map((item) => ('str' in item ? item.str : '')).join(' '));
    const tree: unknown = await page.getStructTree();
    if (isNode(tree)) count(tree);
  }
  const { info } = await pdf.getMetadata();
  const fields = info as { readonly Title?: string; readonly Language?: string | null };
  const marks = (await pdf.getMarkInfo()) as ReadonlyMap<string, boolean> | null;
  const attachments = (await pdf.getAttachments()) as ReadonlyMap<string, unknown> | null;
  const result = {
    pages,
    title: fields.Title ?? '',
    language: fields.Language ?? null,
    isMarked: marks?.get('Marked') ?? false,
    attachments: [...(attachments?.keys() ?? [])].toSorted(),
    roles,
    figuresWithoutAlt,
  };
  await task.destroy();
  return result;
}

function isNode(value: unknown): value is TreeNode {
  return typeof value === 'object' && value !== null;
}
