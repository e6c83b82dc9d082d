/**
 * Where the words of visits go in a day too narrow for them: two lines of labels, turn and turn about, each label at its visit's
 * time where there is room and moved aside where not. The mark of the time itself stays where it belongs.
 */
export type LabelPlace = { readonly lane: 0 | 1; readonly left: number; readonly width: number };

/** Fewer pixels do not even show the hour; then labels of a crowded day get what there is. */
const WANTED_PX = 58;

/** `starts`: where the visits begin, in pixels of a day `dayWidth` wide, ascending. One place each, none over another in its line. */
export function placeLabels(starts: readonly number[], dayWidth: number): readonly LabelPlace[] {
  const places: LabelPlace[] = starts.map(() => ({ lane: 0, left: 0, width: 0 }));
  for (const lane of [0, 1] as const) {
    const indexes = starts.map((_start, index) => index).filter((index) => index % 2 === lane);
    const least = Math.min(WANTED_PX, dayWidth / Math.max(1, indexes.length));
    const lefts = spread(
      indexes.map((index) => starts[index] ?? 0),
      least,
      dayWidth,
    );
    indexes.forEach((index, at) => {
      const left = lefts[at] ?? 0;
      places[index] = { lane, left, width: (lefts[at + 1] ?? dayWidth) - left };
    });
  }
  return places;
}

/** As near to where they are wanted as `least` between them allows, the last one `least` before the end. */
function spread(wanted: readonly number[], least: number, end: number): readonly number[] {
  const lefts = [...wanted];
  let limit = end;
  for (let at = lefts.length - 1; at >= 0; at -= 1) {
    limit = Math.min(lefts[at] ?? 0, limit - least);
    lefts[at] = limit;
  }
  let from = 0;
  return lefts.map((left) => {
    const placed = Math.max(from, left);
    from = placed + least;
    return placed;
  });
}
