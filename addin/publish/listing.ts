import type { PairAnswer } from "./answers.ts";
import { groupedAnswers } from "./answers.ts";
import type { PublishedPattern } from "./published.ts";
import { isolated } from "./telling.ts";
import type { VerdictWords, FitKind } from "./words/words.ts";

export const listingForms = ["short", "long", "table"] as const;
/** `short` names the figures, `long` says why and what to change too, `table` has a row for each figure. */
export type ListingForm = (typeof listingForms)[number];

/** The words under a pattern, for its listing or its cover, as plain text. */
export function listingText(
  { draftedFor, answers }: Pick<PublishedPattern, "draftedFor" | "answers">,
  figures: readonly string[],
  words: VerdictWords,
  form: "short" | "long",
): string {
  const { listing, list } = words;
  const namesOf = (members: readonly number[]): string =>
    list(
      members
        .map((at) => figures[at] ?? "")
        .filter((name) => name !== "")
        .map(isolated),
    );
  const others = (kind: FitKind): readonly number[] =>
    answers.flatMap((answer, at) =>
      answer.kind === kind && !(kind === "fits" && figures[at] === draftedFor) ? [at] : [],
    );
  const told = (kind: FitKind): string =>
    form === "short"
      ? namesOf(others(kind))
      : groupedAnswers(kind, answers)
          .map(({ gist, members }) => `${namesOf(members)}${gist === "" ? "" : ` (${gist})`}`)
          .join("; ");
  const fits = namesOf(others("fits"));
  const sentences = [
    draftedFor === undefined ? "" : listing.draftedFor(isolated(draftedFor)),
    fits === "" ? "" : listing.fits(fits, draftedFor === undefined),
    others("change").length === 0 ? "" : listing.change(told("change")),
    others("unsure").length === 0 || form === "short" ? "" : listing.unsure(told("unsure")),
    others("not").length === 0 ? "" : listing.not(told("not")),
  ].filter((sentence) => sentence !== "");
  const said = answers.some(({ kind }) => kind !== "unsure") ? sentences : [...sentences, listing.nothing];
  return [...said, listing.measureYours].join(" ");
}

/** The same as a table with headings: pattern, figure, verdict, why or what to change. */
export function listingTable(
  { code, answers }: { readonly code: string; readonly answers: readonly PairAnswer[] },
  figures: readonly string[],
  { listing, verdicts }: VerdictWords,
): readonly (readonly string[])[] {
  return [
    listing.headings,
    ...answers.map(({ verdict, says }, at) => [code, figures[at] ?? "", verdicts[verdict], says]),
  ];
}
