/** A row that was chosen: its place, and its name to find it again when rows have moved. */
export interface Chosen {
  readonly place: number;
  readonly name: string;
}

/** The place of what was chosen among names that may have changed since; the first when it is gone. */
export function placeOfChosen(names: readonly string[], chosen: Chosen | undefined): number {
  if (!chosen) return 0;
  if (names[chosen.place] === chosen.name) return chosen.place;
  return Math.max(0, names.indexOf(chosen.name));
}
