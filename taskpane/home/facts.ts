import type { Chart } from "../../addin/chart/chart.ts";
import type { Flag } from "../../addin/checking/checkChart.ts";
import type { Fitting, Match } from "../../addin/fit/match.ts";
import { isWearable } from "../../addin/fit/verdict.ts";
import type { GroupedFigure } from "../../addin/similarity/groups.ts";
import type { Since } from "../publish/sinceWords.ts";
import { changeCounts, changeWords } from "../publish/sinceWords.ts";
import type { SectionKey } from "../shell/sections.ts";
import type { Tone } from "../ui/SignedWords.tsx";
import { count, dayName } from "../ui/words.ts";

/** What is known of all figures, for the one that is looked for; each as soon as it is. */
export interface Worked {
  readonly chart: Chart;
  readonly flags: readonly Flag[] | undefined;
  readonly grouped: readonly GroupedFigure[] | undefined;
  readonly fitting: Fitting | undefined;
}

/** What is known of a workbook with a chart. `undefined` is not known yet; a text says why it cannot be. */
export interface Known {
  readonly figures: number;
  readonly measures: number;
  /** Readings and figures that deserve a second look, confirmed ones left out. */
  readonly toLookAt: number | string | undefined;
  readonly bodies: Bodies | string | undefined;
  /** `"none"` where there is no table of patterns. */
  readonly wear: Wear | "none" | { readonly why: string } | undefined;
  /** Left out where nothing was published. */
  readonly since?: Since | undefined;
}

export interface Bodies {
  readonly bodies: number;
  /** Bodies that two figures or more have. */
  readonly shared: number;
  /** Figures that share theirs with another. */
  readonly sharing: number;
}

export interface Wear {
  readonly patterns: number;
  /** Rows of the table that cannot be read. */
  readonly leftOut: number;
  readonly canBeWorn: number;
  readonly cannot: number;
  readonly tooClose: number;
  readonly notKnown: number;
}

/** One line of what the workbook says, and the section that tells more. */
export interface Fact {
  readonly name: string;
  readonly sign: string;
  readonly tone: Tone;
  readonly says: string;
  readonly words: string;
  /** `undefined` opens the chart itself. */
  readonly to: SectionKey | undefined;
}

/** The one step that helps most now. */
export interface Step {
  readonly why: string;
  readonly label: string;
  readonly to: SectionKey;
  /** What is asked of that section at once. */
  readonly asks?: "newPattern";
}

export function bodiesOf(grouped: readonly GroupedFigure[]): Bodies {
  const sizes = new Map(grouped.map(({ group, size }) => [group, size]));
  const shared = [...sizes.values()].filter((size) => size > 1);
  return {
    bodies: sizes.size,
    shared: shared.length,
    sharing: shared.reduce((sum, size) => sum + size, 0),
  };
}

export function wearOf(match: Match, leftOut: number): Wear {
  const counts = { canBeWorn: 0, cannot: 0, tooClose: 0, notKnown: 0 };
  match.patterns.forEach((_, pattern) => {
    match.figures.forEach((_, figure) => {
      const verdict = match.verdict(pattern, figure);
      if (isWearable(verdict)) counts.canBeWorn++;
      else if (verdict === "not known") counts.notKnown++;
      else if (verdict === "too close to call") counts.tooClose++;
      else counts.cannot++;
    });
  });
  return { patterns: match.patterns.length, leftOut, ...counts };
}

/** What stands in the way first, then what is missing; at the end what the answers are for. */
export function nextStep({ figures, toLookAt, wear }: Known): Step | undefined {
  if (typeof toLookAt === "number" && toLookAt > 0)
    return {
      why: `${toLookAt === 1 ? "One thing deserves" : `${String(toLookAt)} things deserve`} a second look. Every answer rests on the readings, so begin there.`,
      label: toLookAt === 1 ? "Look at it" : "Look at them",
      to: "check",
    };
  if (figures === 1)
    return {
      why: "There is one figure. With a second one you see what they can share.",
      label: "Add figures",
      to: "import",
    };
  if (wear === "none")
    return {
      why: "No patterns are written down yet. With them you see who can wear what, and what to change.",
      label: "Add a pattern",
      to: "fit",
      asks: "newPattern",
    };
  if (wear === undefined || toLookAt === undefined || "why" in wear) return undefined;
  if (wear.leftOut > 0)
    return {
      why: `${count(wear.leftOut, "row")} of your patterns cannot be read yet.`,
      label: "See which",
      to: "fit",
    };
  if (wear.notKnown > 0)
    return {
      why: `${count(wear.notKnown, "verdict waits", "verdicts wait")} for a reading that nobody has taken.`,
      label: "See what to measure",
      to: "groups",
    };
  return {
    why: "All readings are in order, and every verdict is given.",
    label: "See who wears what",
    to: "fit",
  };
}

/** What the workbook says, a line each, in the order of the work. */
export function factsOf(
  { figures, measures, toLookAt, bodies, wear, since }: Known,
  sheet: string,
  today = new Date(),
): readonly Fact[] {
  return [
    {
      name: `${count(figures, "figure")}, ${count(measures, "measure")}`,
      ...{ sign: "", tone: "quiet" as const, says: "" },
      words: `Your chart, on the sheet “${sheet}”.`,
      to: undefined,
    },
    { name: "To look at again", ...lookWords(toLookAt), to: "check" },
    { ...bodyWords(bodies), to: "groups" },
    { ...wearWords(wear, figures), to: "fit" },
    ...(since && changeCounts(since.changes) !== ""
      ? [
          {
            ...{ name: "Changed since you published", sign: "≈", tone: "brass" as const },
            says: String(Object.values(since.changes).flat().length),
            words: `Since ${dayName(since.day, today)}: ${changeWords(since.changes)}`,
            to: "publish" as const,
          },
        ]
      : []),
  ];
}

type Words = Pick<Fact, "sign" | "tone" | "says" | "words">;
const waiting = { sign: "…", tone: "quiet", says: "being worked out", words: "" } as const;
const trouble = (words: string) => ({ sign: "✕", tone: "thread", says: "cannot be told", words }) as const;

function lookWords(toLookAt: Known["toLookAt"]): Words {
  if (toLookAt === undefined) return waiting;
  if (typeof toLookAt === "string") return trouble(toLookAt);
  return toLookAt === 0
    ? { sign: "●", tone: "leaf", says: "nothing", words: "No reading stands out." }
    : {
        sign: "≈",
        tone: "brass",
        says: String(toLookAt),
        words: "Readings that cannot be read, or that do not go with the others.",
      };
}

function bodyWords(bodies: Known["bodies"]): Words & Pick<Fact, "name"> {
  if (typeof bodies !== "object") {
    return { name: "Shared bodies", ...(bodies === undefined ? waiting : trouble(bodies)) };
  }
  const { shared, sharing } = bodies;
  const alone = bodies.bodies - shared;
  return {
    name: count(bodies.bodies, "body", "bodies"),
    sign: "",
    tone: "quiet",
    says: shared === 0 ? "none shared" : `${String(shared)} shared`,
    words:
      shared === 0
        ? "Every figure has a body of its own."
        : `${count(sharing, "figure")} share with another; ${alone === 0 ? "none is alone" : `${String(alone)} with none that is known`}.`,
  };
}

function wearWords(wear: Known["wear"], figures: number): Words & Pick<Fact, "name"> {
  if (wear === "none")
    return {
      ...{ name: "No patterns yet", sign: "", tone: "quiet", says: "" },
      words: "Write down what you sell, and see who can wear it.",
    };
  if (wear === undefined) return { name: "Patterns", ...waiting };
  if ("why" in wear) return { name: "Patterns", ...trouble(wear.why) };
  const { canBeWorn, cannot, tooClose, notKnown } = wear;
  const rest = [
    `${String(cannot)} times not`,
    ...(tooClose > 0 ? [`${String(tooClose)} times too close to call`] : []),
    ...(notKnown > 0 ? [`${String(notKnown)} times a reading is missing`] : []),
  ];
  return {
    name: `${count(wear.patterns, "pattern")} on ${count(figures, "figure")}`,
    ...{ sign: "", tone: "quiet", says: "" },
    words: `Can be worn ${String(canBeWorn)} times, ${rest.join(", ")}.`,
  };
}
