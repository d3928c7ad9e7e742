/** The arguments of an example’s formula as they are written; commas within quotes and braces part nothing. */
export function exampleArguments(formula: string): string[] {
  const inner = formula.slice(formula.indexOf("(") + 1, -1);
  return (inner.match(/(?:"[^"]*"|\{[^}]*\}|[^,"{])+/g) ?? []).map((text) => text.trim());
}
