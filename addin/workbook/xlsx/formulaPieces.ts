/** Text in quotes, sheet names in apostrophes, and (nested) square brackets of table references. */
const untouchable = /("(?:[^"]|"")*"|'(?:[^']|'')*'|\[(?:'.|[^[\]']|\[(?:'.|[^[\]'])*\])*\])/s;

/**
 * A formula cut into pieces: those at even places hold names, cell references and operators; those at odd
 * places are quoted text, quoted sheet names or table references in square brackets.
 */
export function formulaPieces(formula: string): readonly string[] {
  return formula.split(untouchable);
}

/** The formula with quoted and bracketed parts blanked out, so that positions stay the same. */
export function codeAlone(formula: string): string {
  return formulaPieces(formula)
    .map((piece, i) => (i % 2 === 0 ? piece : "_".repeat(piece.length)))
    .join("");
}

/** The formula with its names, cell references and operators changed, and quoted and bracketed parts as they were. */
export function mapCode(formula: string, change: (code: string) => string): string {
  return formulaPieces(formula)
    .map((piece, i) => (i % 2 === 0 ? change(piece) : piece))
    .join("");
}
