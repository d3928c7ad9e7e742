/** How far one point of a piece moves with one measure: a share of what the measure changes by. */
export interface GradeRule {
  /** Name of a piece, as in {@link gradePieces}. */
  readonly piece: string;
  /** Name of a point of that piece. */
  readonly point: string;
  /** id of the dictionary */
  readonly measure: string;
  /** Share of the change to the right on the piece as drawn: away from the centre line, fold or crease where above 0. */
  readonly across: number;
  /** Share of the change upwards on the piece as drawn. */
  readonly along: number;
  /** Row within the user’s table, from 0 (row 0 is the headings); undefined for the rules that come with the project. */
  readonly row?: number;
}

/** A line around the body on which the pieces of a garment meet, such as the bust line. */
export interface GirthLine {
  readonly name: string;
  /** id of the girth that the line has to follow */
  readonly measure: string;
  /** How often the point is on the line, counted with mirroring: 2 for one of two halves. */
  readonly times: number;
  /** 1 where the line ends on the right of the piece, −1 where it ends on the left. */
  readonly end: 1 | -1;
}

export interface GradePoint {
  readonly name: string;
  readonly line?: GirthLine;
}

/** A piece of a basic block: half of it where it is cut on a fold or twice. */
export interface GradePiece {
  readonly name: string;
  /** The garment whose pieces meet at the girth lines. */
  readonly garment: string;
  /** Where 0 across and 0 along are, in words. */
  readonly origin: string;
  /** The corners in order around the piece. */
  readonly points: readonly GradePoint[];
}
