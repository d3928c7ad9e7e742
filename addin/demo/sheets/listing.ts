import type { CellContent, SheetContent } from "../../workbook/content.ts";
import type { Book } from "./book.ts";
import { choices, chosen, figuresNeeded, patternsNeeded } from "./book.ts";
import { heading, quiet, title } from "./parts.ts";

/** The words under a pattern, for its listing and its cover. */
export function listingSheet(book: Book): SheetContent {
  const words = (form: string, language: string): CellContent => {
    const formula = book.answer(
      `=FIT.LISTINGWORDS(Patterns[#All], Figures[#All], B3, "${form}", "${language}", EaseRules[#All], GarmentClasses[#All])`,
      [figuresNeeded, patternsNeeded, chosen("pattern", "B3")],
    );
    return { ...(typeof formula === "string" ? { formula } : formula), style: "wrap" };
  };
  return {
    name: "Listing",
    cells: [
      [title("What do I write under a pattern?")],
      [
        quiet(
          "Copy the words into your listing. Write another code into the cell. Publish, in the pane, gives them for all patterns.",
        ),
      ],
      [heading("Pattern"), book.asked("D-1")],
      [],
      [heading("Short"), words("short", "english")],
      [heading("With reasons and changes"), words("long", "english")],
      [heading("In German"), words("short", "german")],
    ],
    frozenRows: 3,
    columnWidths: [130, 690],
    pickLists: [choices("pattern", 2, 1)],
  };
}
