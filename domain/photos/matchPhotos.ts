/** Which photo of a run a picture may be, by the time it was taken: the step that was being worked on then, in the sheet's order. */
import type { SheetStep } from '../procedure/modelSheet.ts';

export type PhotoToMatch = { readonly photoId: string; readonly takenAt: string | null };

export type MatchedPhoto = {
  readonly photoId: string;
  /** null: the run asks for no photo that is still missing. */
  readonly place: { readonly stepKey: string; readonly itemKey: string } | null;
  /** `outside`: by its own clock it was not taken during this visit; the order alone was gone by. */
  readonly when: 'during' | 'outside' | 'unknown';
  /** Seconds before (negative) or after the visit; 0 while it lasted. */
  readonly awayS: number;
};

/** Cameras are set by hand, and a plate may be photographed on the way in. */
const SLACK_S = 15 * 60;

export function matchPhotos(input: {
  readonly photos: readonly PhotoToMatch[];
  readonly steps: readonly SheetStep[];
  /** What was recorded when, in which step. */
  readonly marks: readonly { readonly stepKey: string; readonly at: string }[];
  readonly takenItemKeys: ReadonlySet<string>;
  readonly visit: { readonly startedAt: string; readonly endedAt: string };
}): readonly MatchedPhoto[] {
  const places = input.steps.flatMap((step, order) =>
    step.items.flatMap((item) => (item.kind === 'photo' ? [{ stepKey: step.key, itemKey: item.key, order }] : [])),
  );
  let free = places.filter(({ itemKey }) => !input.takenItemKeys.has(itemKey));
  const inOrder = input.photos.toSorted((a, b) => (a.takenAt ?? '').localeCompare(b.takenAt ?? ''));
  const matched = new Map(
    inOrder.map(({ photoId, takenAt }): [string, MatchedPhoto] => {
      const awayS = takenAt === null ? 0 : awayFrom(takenAt, input.visit);
      const when = takenAt === null ? 'unknown' : Math.abs(awayS) > SLACK_S ? 'outside' : 'during';
      const step = when === 'during' && takenAt !== null ? stepAt(takenAt, input.marks) : null;
      const order =
        step === null
          ? 0
          : Math.max(
              0,
              input.steps.findIndex(({ key }) => key === step),
            );
      const place = free.find((one) => one.order >= order) ?? free.at(-1) ?? null;
      if (place !== null) free = free.filter((one) => one !== place);
      return [photoId, { photoId, place: place && { stepKey: place.stepKey, itemKey: place.itemKey }, when, awayS }];
    }),
  );
  return input.photos.flatMap(({ photoId }) => matched.get(photoId) ?? []);
}

function stepAt(takenAt: string, marks: readonly { readonly stepKey: string; readonly at: string }[]): string | null {
  const before = marks.filter(({ at }) => Date.parse(at) <= Date.parse(takenAt));
  const newest = before.toSorted((a, b) => Date.parse(a.at) - Date.parse(b.at)).at(-1);
  return newest?.stepKey ?? null;
}

function awayFrom(
  takenAt: string,
  { startedAt, endedAt }: { readonly startedAt: string; readonly endedAt: string },
): number {
  const taken = Date.parse(takenAt);
  const early = taken - Date.parse(startedAt);
  if (early < 0) return Math.round(early / 1000);
  return Math.max(0, Math.round((taken - Date.parse(endedAt)) / 1000));
}
