/** The answers of one item as they are told: each that was given, without the half of one that was completed a moment later. */

type Told = { readonly value: string | null; readonly reason: string | null; readonly byId: string };

/** Oldest first. A "no" whose cause the same person wrote down next is one answer, not two. */
export function toldAnswers<A extends Told>(answers: readonly A[]): readonly A[] {
  return answers.filter((answer, index) => {
    const next = answers[index + 1];
    const isCompleted =
      next !== undefined &&
      next.value === answer.value &&
      next.byId === answer.byId &&
      answer.reason === null &&
      next.reason !== null;
    return !isCompleted;
  });
}
