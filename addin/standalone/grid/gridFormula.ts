const parts = /"(?:[^"]|"")*"|([\p{L}_][\p{L}\p{N}_.]*)?\[@(?:\[([^\]]*)\]|([^[\]]*))\]/gu;

/**
 * A formula as the grid’s engine reads it: it does not know the short form for “this row”, so `Figures[@Bust]`
 * becomes `Figures[[#This Row],[Bust]]`, which means the same and is what workbook files hold anyway.
 *
 * @param table the table that the cell is in, for `[@Bust]` without a table name
 */
export function toGridFormula(formula: string, table?: string): string {
  return formula.replace(parts, (whole: string, named?: string, bracketed?: string, bare?: string) => {
    const owner = named ?? table;
    if (whole.startsWith('"') || owner === undefined) return whole;
    const column = bracketed ?? bare ?? "";
    return column === "" ? `${owner}[#This Row]` : `${owner}[[#This Row],[${column}]]`;
  });
}
