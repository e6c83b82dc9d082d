/** Which photo of a run a picture may be, by the time it was taken: the step that was being worked on then, in the sheet's order. */
export type PhotoToMatch = {
  readonly photoId: string;
  readonly takenAt: string | null;
  /** The clock it was taken by may be set to another zone: its time is not gone by. */
  readonly isDoubted?: boolean;
};

export type MatchedPhoto = {
  readonly photoId: string;
  /** null: the run asks for no photo that is still missing. */
  readonly place: { readonly stepKey: string; readonly itemKey: string } | null;
  /**
   * `outside`: by its own clock it was not taken during this visit; `idle`: while it lasted, but when nobody was at work on it.
   * In all but `during` the order alone was gone by.
   */
  readonly when: 'during' | 'outside' | 'idle' | 'doubted' | 'unknown';
  /** Seconds before (negative) or after the visit, or from whatever was recorded nearest to it; 0 during it. */
  readonly awayS: number;
};

/** Cameras are set by hand, and a plate may be photographed on the way in. */
const SLACK_S = 15 * 60;
/** Longer than a wait for the air to come out or a meal; shorter than from one trip to the next (common practice, no source). */
const IDLE_S = 2 * 3600;

export function matchPhotos(input: {
  readonly photos: readonly PhotoToMatch[];
  /** Where a photo is asked for and there is none yet, in the sheet's order. */
  readonly places: readonly { readonly stepKey: string; readonly itemKey: string }[];
  /** All steps, in order. */
  readonly stepKeys: readonly string[];
  /** What was recorded when, in which step. */
  readonly marks: readonly Mark[];
  readonly visit: { readonly startedAt: string; readonly endedAt: string };
}): readonly MatchedPhoto[] {
  const { marks, stepKeys } = input;
  const orderOf = (stepKey: string) => stepKeys.indexOf(stepKey);
  let free = input.places.map((place) => ({ ...place, order: orderOf(place.stepKey) }));
  const timed = input.photos.map((photo) => ({ ...photo, ...timeOf(photo, marks, input.visit) }));
  // A time that can be gone by comes before those that cannot: a wrong clock must not take the place of a right one.
  const inTurn = timed.toSorted(
    (a, b) =>
      Number(a.when !== 'during') - Number(b.when !== 'during') || (a.takenAt ?? '').localeCompare(b.takenAt ?? ''),
  );
  const matched = new Map(
    inTurn.map(({ photoId, takenAt, when, awayS }): [string, MatchedPhoto] => {
      const step = when === 'during' && takenAt !== null ? stepAt(takenAt, marks) : null;
      const order = step === null ? 0 : Math.max(0, orderOf(step));
      const place = free.find((one) => one.order >= order) ?? free.at(-1) ?? null;
      if (place !== null) free = free.filter((one) => one !== place);
      return [photoId, { photoId, place: place && { stepKey: place.stepKey, itemKey: place.itemKey }, when, awayS }];
    }),
  );
  return input.photos.flatMap(({ photoId }) => matched.get(photoId) ?? []);
}

type Mark = { readonly stepKey: string; readonly at: string };

function timeOf(
  { takenAt, isDoubted = false }: PhotoToMatch,
  marks: readonly Mark[],
  visit: { readonly startedAt: string; readonly endedAt: string },
): Pick<MatchedPhoto, 'when' | 'awayS'> {
  if (takenAt === null) return { when: 'unknown', awayS: 0 };
  if (isDoubted) return { when: 'doubted', awayS: 0 };
  const awayS = awayFrom(takenAt, visit);
  if (Math.abs(awayS) > SLACK_S) return { when: 'outside', awayS };
  const nearestS = nearestMarkS(takenAt, marks);
  return nearestS === null || Math.abs(nearestS) <= IDLE_S
    ? { when: 'during', awayS }
    : { when: 'idle', awayS: nearestS };
}

/** Seconds from what was recorded nearest in time: negative before it. null: nothing was. */
function nearestMarkS(takenAt: string, marks: readonly Mark[]): number | null {
  const distances = marks.map(({ at }) => Math.round((Date.parse(takenAt) - Date.parse(at)) / 1000));
  return distances.toSorted((a, b) => Math.abs(a) - Math.abs(b))[0] ?? null;
}

function stepAt(takenAt: string, marks: readonly Mark[]): string | null {
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
