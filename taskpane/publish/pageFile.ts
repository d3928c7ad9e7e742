import { buyersFile } from "../../addin/publish/buyersFile.ts";
import { pageStyleOf, publishedPage } from "../../addin/publish/page/publishedPage.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import type { ToleranceTable } from "../../addin/chart/tolerances.ts";
import { sha256 } from "../saving/sha256.ts";
import type { PublicationAtWork } from "../../addin/publish/published.ts";

/**
 * The page of a publication as the text of an HTML file.
 *
 * @throws {InputError} when the script of the page cannot be fetched
 */
export async function pageFile(
  work: PublicationAtWork,
  tolerances: ToleranceTable | undefined,
): Promise<string> {
  const { published } = work;
  const code = await scriptText();
  return publishedPage(published, {
    code,
    hash: await sha256(code),
    styleHash: await sha256(pageStyleOf(published)),
    file: published.publication.fitPage ? buyersFile(work, tolerances) : undefined,
  });
}

async function scriptText(): Promise<string> {
  const answer = await fetch(new URL("buyers.js", document.baseURI)).catch(() => undefined);
  if (answer?.ok !== true)
    throw new InputError(
      "The script of the page could not be fetched. Make sure that you are connected, then press the button again.",
    );
  return (await answer.text()).trim();
}
