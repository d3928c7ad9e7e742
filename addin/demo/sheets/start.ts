import type { SheetContent } from "../../workbook/content.ts";
import { demoTitle } from "../title.ts";
import { heading, quiet, title, wrapped } from "./parts.ts";

/** What the workbook is and how to begin. */
export function startSheet(): SheetContent {
  return {
    name: "Start",
    cells: [
      [title(demoTitle)],
      [quiet("The maker, her figures and all readings are invented. Change whatever you like.")],
      [],
      [heading("What is here")],
      [
        wrapped(
          "Figures: a measurement chart. One row is one figure, one column is one measure or a remark.",
        ),
      ],
      [
        wrapped(
          "Tolerances: how far two readings may differ and still count as the same, for a body or a class of garments.",
        ),
      ],
      [
        wrapped(
          "Patterns: what you sell. One row is one garment: its class, its cloth, its openings, its size.",
        ),
      ],
      [wrapped("Ease rules: how much room each class of garment has and needs. Edit them to your taste.")],
      [wrapped("Garment classes: what you can write under Garment class in the two sheets before.")],
      [wrapped("Grade rules: how each point of a pattern follows the measures. Edit them to your drafting.")],
      [wrapped("Compare: two figures side by side. Write other names into the two cells at the top.")],
      [wrapped("Groups: which figures share a body, and whom to draft for.")],
      [wrapped("Closest: whose bodies come closest to that of one figure.")],
      [wrapped("Tree: how figures join, closest first.")],
      [wrapped("Loose clothes: who shares loose clothes though the bodies differ.")],
      [wrapped("Sharing: what two figures can share, and why not.")],
      [wrapped("House models: the fewest figures to keep at hand so that every other is near one of them.")],
      [wrapped("Measure next: the missing readings that would tell most about who shares a body.")],
      [wrapped("Expected: what a reading may be expected to be, to check the tape against.")],
      [wrapped("Flags: readings that deserve a second look. Some mistakes stand in the chart on purpose.")],
      [wrapped("Match: every pattern on every figure, in one table.")],
      [wrapped("Wearers: every figure with its verdict on one pattern, best first.")],
      [wrapped("Wardrobe: every pattern with its verdict on one figure, best first.")],
      [wrapped("Why: every check of one pattern on one figure, with what to change.")],
      [wrapped("Listing: the words to write under a pattern, in English and German.")],
      [wrapped("Grade: how far every point of a pattern moves from one figure to another.")],
      [wrapped("Resize: the print scale from one figure to another, what it leaves, or why to draft anew.")],
      [wrapped("Sizes: a run of sizes, its steps, and the grade of a skirt from one size to the others.")],
      [wrapped("Skirts and darts: where to cut the waist of a flared skirt, how wide darts become.")],
      [wrapped("Small sums: cloth over a body, ease, openings, inches and millimetres, repeated readings.")],
      [
        wrapped(
          "Readings: what was measured more than once. Take five figures twice in a measure, and its own error counts.",
        ),
      ],
      [],
      [heading("Questions about figures")],
      [wrapped("Who shares a body? Look at Groups.")],
      [wrapped("Who only shares loose clothes? Look at Loose clothes; what two can share, at Sharing.")],
      [
        wrapped(
          "Which figures should I keep as house models? Look at House models, and change the reach at its top.",
        ),
      ],
      [wrapped("What should I measure next? Look at Measure next, and at Flags for what to measure again.")],
      [],
      [heading("Questions about garments")],
      [
        wrapped(
          "Which figures wear this dress? Look at Wearers, and write the code of the pattern at its top.",
        ),
      ],
      [wrapped("What can this figure wear? Look at Wardrobe, and write the name of the figure at its top.")],
      [wrapped("Why not? Look at Why, and write a pattern and a figure at its top.")],
      [wrapped("What do I change? Look at the last column of Why, or of Wearers.")],
      [],
      [heading("How to use it")],
      [
        wrapped(
          "1. Look at Flags. Find a flagged reading in Figures and type the suggested one: the flag goes.",
        ),
      ],
      [
        wrapped(
          "2. Look at Groups and Match while you mend: a wrong reading keeps a figure alone and spoils its verdicts.",
        ),
      ],
      [
        wrapped(
          "3. Type a figure of your own below Figures, or a garment below Patterns. Leave empty what you do not know.",
        ),
      ],
      [
        wrapped(
          "4. A unit in brackets, such as Bust (in), tells how a column is read. Write inches as 5 3/8 if you like.",
        ),
      ],
      [
        wrapped(
          "5. Everything is a formula: select a cell to see how it is written, and copy it into your own sheets.",
        ),
      ],
      [],
      [heading("Take care")],
      [
        wrapped(
          "Garments for figures that children play with can have small parts and cords that are a danger to them. Follow the toy safety rules of your country, and ask someone qualified.",
        ),
      ],
    ],
    columnWidths: [720],
  };
}
