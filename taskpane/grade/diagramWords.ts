/** What the drawing of a piece is, and what it is not. */
export const diagramWords =
  "This is a diagram by the grade rules, with straight lines and without ease, curves and seam allowance. It is not a pattern that is ready to cut.";
