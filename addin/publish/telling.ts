import type { Telling } from "./answers.ts";
import type { Publication } from "./publication.ts";
import { publishedLength, withUnit } from "./publishedLength.ts";
import type { VerdictWords } from "./words/words.ts";

/** Amounts as buyers read them: in the units of the chart, inches to a sixteenth. */
export function tellingOf(
  words: VerdictWords,
  publication: Pick<Publication, "units">,
  mayTell: (measure: string) => boolean,
): Telling {
  return {
    words,
    mayTell,
    amount: (mm) => {
      const texts = publication.units.flatMap((unit) => {
        const fine = unit === "inches in eighths" ? "inches in sixteenths" : unit;
        const text = publishedLength(
          mm,
          fine,
          mm < finelyTold ? "as measured" : "to 1 mm",
          words.decimalMark,
        );
        return text === "0" ? [] : [withUnit(text, unit, words.inch)];
      });
      return texts.length === 0 ? undefined : [...new Set(texts)].join(" / ");
    },
  };
}

/** mm from which tenths are more than a seam can tell. */
const finelyTold = 10;

/** A name that is written from right to left must not turn the sentence round it. */
export function isolated(name: string): string {
  return rightToLeft.test(name) ? `\u2068${name}\u2069` : name;
}

const rightToLeft = /[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}]/u;
