import { InputError } from "../../../addin/measures/inputError.ts";
import type { Published } from "../../../addin/publish/published.ts";
import { chartPdf } from "./chartPdf.ts";

/**
 * The chart as the bytes of a PDF.
 *
 * @throws {InputError} when the fonts cannot be fetched
 */
export async function pdfFile(published: Published): Promise<Uint8Array<ArrayBuffer>> {
  const [plain, bold] = await Promise.all([face("DejaVuSansCondensed"), face("DejaVuSansCondensed-Bold")]);
  return Uint8Array.from(await chartPdf(published, { plain, bold }));
}

async function face(name: string): Promise<Uint8Array> {
  const answer = await fetch(new URL(`fonts/${name}.ttf`, document.baseURI)).catch(() => undefined);
  if (answer?.ok !== true)
    throw new InputError(
      "The letters of the PDF could not be fetched. Make sure that you are connected, then press the button again.",
    );
  return new Uint8Array(await answer.arrayBuffer());
}
