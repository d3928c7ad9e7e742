/**
 * Stands in the page for libraries that the grid brings along for documents with pages, and never calls for a sheet: `franc-min`
 * tells the language of a paragraph, by which its words would be hyphenated, and `opentype.js` reads font files, by which its letters
 * would be set. Together they are more than 400 kB of script that each opening would have to read. It also stands for the patterns
 * by which words of each language are divided, which are looked for by names that it does not have.
 */

/** “Undetermined”, by ISO 639-2: nothing is hyphenated. */
export function franc(): string {
  return "und";
}

export function parse(): never {
  throw new Error("Fonts are not read here.");
}
