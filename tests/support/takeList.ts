/** A list taken in or out, followed as the screen does: asked again and again until it is through. */
import type { InputOf, OperationName, OutputOf, ReplyOf } from '../../electron/contract/index.ts';
import type { TestCore } from './testCore.ts';

type Ends = Extract<OutputOf<'imports.follow'>, { isDone: true }>;
type Asks<N extends OperationName> =
  | Extract<ReplyOf<N>, { ok: false }>
  | Extract<ReplyOf<'imports.follow'>, { ok: false }>;

/** The end of it, or the failure of beginning or of following. */
export async function askTakeIn(
  test: Pick<TestCore, 'ask'>,
  input: InputOf<'imports.start'>,
): Promise<{ readonly ok: true; readonly value: Ends } | Asks<'imports.start'>> {
  const begun = await test.ask('imports.start', input);
  return begun.ok ? followed(test, begun.value.workId) : begun;
}

export async function askTakeOut(
  test: Pick<TestCore, 'ask'>,
  input: InputOf<'imports.startUndo'>,
): Promise<{ readonly ok: true; readonly value: Ends } | Asks<'imports.startUndo'>> {
  const begun = await test.ask('imports.startUndo', input);
  return begun.ok ? followed(test, begun.value.workId) : begun;
}

/** The same where a failure fails the test. */
export async function takeIn(test: Pick<TestCore, 'ask'>, input: InputOf<'imports.start'>): Promise<Ends> {
  return endOf(await askTakeIn(test, input));
}

export async function takeOut(test: Pick<TestCore, 'ask'>, input: InputOf<'imports.startUndo'>): Promise<Ends> {
  return endOf(await askTakeOut(test, input));
}

async function followed(test: Pick<TestCore, 'ask'>, workId: string) {
  for (;;) {
    const reply = await test.ask('imports.follow', { workId });
    if (!reply.ok) return reply;
    if (reply.value.isDone) return { ok: true, value: reply.value } as const;
  }
}

function endOf(
  reply: { readonly ok: true; readonly value: Ends } | { readonly ok: false; readonly error: unknown },
): Ends {
  if (reply.ok) return reply.value;
  throw new Error(JSON.stringify(reply.error));
}
