/** Whether a maker's course covers a model, and whether somebody has one on a day. */
import { foldForSearch } from '../text/foldForSearch.ts';

export type HeldTraining = {
  readonly maker: string;
  readonly modelLine: string;
  readonly validFrom: string;
  /** null: it does not run out. */
  readonly validTo: string | null;
};

type Model = { readonly maker: string; readonly model: string };

/** A course covers the models whose name begins with the line's name. */
export function coversModel(training: HeldTraining, { maker, model }: Model): boolean {
  return (
    foldForSearch(training.maker) === foldForSearch(maker) &&
    foldForSearch(model).startsWith(foldForSearch(training.modelLine))
  );
}

export function isTrained(trainings: readonly HeldTraining[], model: Model, on: string): boolean {
  return trainings.some(
    (one) => one.validFrom <= on && (one.validTo === null || on <= one.validTo) && coversModel(one, model),
  );
}
