/** What a file would take for a coded character, and characters that it can hold only as a code. */
const coded = /_(?=x[0-9A-Fa-f]{4}_)|[\uFFFE\uFFFF]/g;

/**
 * Text with `_x0041_` and the like guarded, so that it comes back as it was written.
 * Source: ECMA-376 part 1, 22.9.2.19 (ST_Xstring).
 */
export function storedText(text: string): string {
  return text.replace(coded, code);
}

/** A heading as a table stores it: line breaks and tabs are coded as well. */
export function storedHeading(text: string): string {
  return storedText(text).replace(/[\t\n\r]/g, code);
}

/** Undoes `storedText` where the reader did not. */
export function plainText(stored: string): string {
  return stored.replace(/_x([0-9A-Fa-f]{4})_/g, (_, hex: string) => String.fromCharCode(parseInt(hex, 16)));
}

function code(character: string): string {
  return `_x${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`;
}
