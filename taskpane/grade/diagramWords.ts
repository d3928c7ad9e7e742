/** What the drawing of a piece is, and what it is not. */
export const diagramWords =
  "This is a diagram by the grade rules, without ease and seam allowance. Its armholes, necks, sleeve caps and crotches are curved by eye. It is not a pattern that is ready to cut.";
