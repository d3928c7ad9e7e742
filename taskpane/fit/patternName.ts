/** A pattern as lists name it: “P1 Meadow skirt”. */
export function patternName({ code, title }: { readonly code: string; readonly title: string }): string {
  return title === "" ? code : `${code} ${title}`;
}
