import { garmentClassNamed } from "../addin/chart/garmentClass.ts";
import { measureNamed } from "../addin/chart/measureNamed.ts";
import { easeCheck } from "../addin/fit/easeCheck.ts";
import { measureById } from "../addin/measures/dictionary.ts";
import { InputError } from "../addin/measures/inputError.ts";
import { cutShort, quote, someOf } from "../addin/measures/quote.ts";
import { amount, length, stretch, text, textOf } from "./arguments.ts";
import { garmentClassChoices } from "./choices.ts";
import { defineFunction } from "./descriptor.ts";
import { notANumber } from "./failures.ts";
import { badClasses, badRules, easeRules, garmentClasses } from "./patterns.ts";

export const easeCheckFunction = defineFunction({
  name: "EASECHECK",
  summary:
    "Whether a finished garment has the right ease at one measure: a verdict in words, with the amount.",
  details:
    "Give lengths in mm: the ease rules hold a part in mm beside their percentage, so that they serve from small figures to full " +
    "size. A cloth that stretches is judged at half its stretch, and must close with all of it; where the least ease is " +
    "negative, the stretch is what it is made up with, and is not counted again. The garment’s own cloth takes π times its " +
    "thickness of the room inside: cloth bent round keeps its length half way through (geometry).",
  parameters: {
    garment: length("Finished measure of the garment, in mm."),
    body: length("The body’s measure at the same place, in mm."),
    garment_class: textOf("The garment class, such as Dress or Fitted skirt.", garmentClassChoices),
    measure: text("The measure, such as Bust or Waist."),
    stretch: stretch("How far the cloth stretches: 25% or 0.25."),
    under_thickness: amount("Thickness of all layers worn under the garment, added up, in mm.", 0),
    rules: easeRules(),
    classes: garmentClasses(),
    thickness: amount("Thickness of the garment’s own cloth, in mm; it takes room inside a girth.", 0),
  },
  result: "text",
  examples: [
    {
      formula: 'FIT.EASECHECK(143, 135, "Dress", "Bust")',
      values: [143, 135, "Dress", "Bust"],
      gives: "fits: 8 mm of ease",
    },
    {
      formula: 'FIT.EASECHECK(132, 135, "Dress", "Bust")',
      values: [132, 135, "Dress", "Bust"],
      gives: "too tight by 8.1 mm. Let out 8.1 mm in all: 2 mm at each of 4 seam edges.",
    },
    {
      formula: 'FIT.EASECHECK(132, 135, "Dress", "Bust", 20%)',
      values: [132, 135, "Dress", "Bust", 0.2],
      gives: "fits: −3 mm of ease, 10.2 mm when stretched",
    },
  ],
  failures: [
    notANumber,
    {
      when: "The garment class or the measure is not known. The message offers near names.",
      shows: "#VALUE!",
    },
    { when: "The garment class has no ease rule for the measure.", shows: "#N/A" },
    badRules,
    badClasses,
  ],
  source: "Ease rules: the project’s own; each with its reason under “What the verdicts of fit rest on”.",
  compute: (given) => {
    const garmentClass = garmentClassNamed(given.garment_class, given.classes, "garment_class");
    const id = measureNamed(given.measure, "measure").id;
    const rules = given.rules(given.classes).filter((rule) => rule.garmentClass === garmentClass.name);
    const rule = rules.find(({ measure }) => measure === id);
    if (!rule) {
      const known = someOf(rules.map(({ measure }) => measureById(measure)?.name ?? measure));
      throw new InputError(
        `measure: ${cutShort(garmentClass.name)} has no ease rule for ${quote(given.measure)}. It has rules for ${known || "nothing"}.`,
        "absent",
      );
    }
    const { says, alteration } = easeCheck({
      garmentMm: given.garment,
      bodyMm: given.body,
      garmentClass,
      rule,
      stretch: given.stretch,
      underMm: given.under_thickness,
      thicknessMm: given.thickness,
    });
    return alteration ? `${says}. ${alteration.words}` : says;
  },
});
