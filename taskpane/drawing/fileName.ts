/**
 * Words as the name of a file on any system, without its ending.
 *
 * @example
 * fileNameOf("Grade", "Teal (tall)"); // "grade-teal-tall"
 */
export function fileNameOf(...words: readonly string[]): string {
  const name = words
    .join(" ")
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-|-$/gu, "")
    .slice(0, 80);
  return name === "" ? "drawing" : name;
}
