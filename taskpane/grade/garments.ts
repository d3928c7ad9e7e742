import type { GradePiece } from "../../addin/chart/gradeRule.ts";

/** The pieces that a user can ask for together. */
export interface PieceChoice {
  readonly key: string;
  readonly words: string;
  /** What a formula calls them; undefined for all. */
  readonly name: string | undefined;
  readonly pieces: readonly GradePiece[];
}

/** Every garment, each of its pieces where it has several, and all together. */
export function pieceChoices(pieces: readonly GradePiece[]): readonly PieceChoice[] {
  const garments = [...new Set(pieces.map(({ garment }) => garment))];
  return [
    ...garments.flatMap((garment) => {
      const own = pieces.filter((piece) => piece.garment === garment);
      const whole = { key: `garment ${garment}`, words: garment, name: garment, pieces: own };
      if (own.length < 2) return [whole];
      return [
        whole,
        ...own.map((piece) => ({
          key: `piece ${piece.name}`,
          words: `${piece.name} alone`,
          name: piece.name,
          pieces: [piece],
        })),
      ];
    }),
    { key: "all", words: "All garments", name: undefined, pieces },
  ];
}
