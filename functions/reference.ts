import { descriptors } from "./all.ts";
import type { Example, FunctionDescriptor, NamedParameter, Result, Table } from "./descriptor.ts";
import { isTable } from "./descriptor.ts";
import { exampleChart, exampleTolerances } from "./exampleChart.ts";
import { examplePatterns } from "./examplePatterns.ts";
import { defaultEaseRules } from "../addin/chart/defaultEaseRules.ts";
import type { EaseAmount } from "../addin/chart/easeRule.ts";
import { corsetGap } from "../addin/chart/garmentClass.ts";
import { comfortableShare } from "../addin/fit/clearance.ts";
import { softBodyFactor, stiffArmFactor } from "../addin/fit/obstacles.ts";
import { usualReadingError } from "../addin/fit/readingError.ts";
import { largestShare } from "../addin/measures/sewable.ts";
import { measureById } from "../addin/measures/dictionary.ts";
import { namespace } from "./namespace.ts";
import { limbsTable, openingsTable } from "./patterns.ts";

/** The function reference as Markdown, written from the descriptors alone. */
export function referenceMarkdown(): string {
  return [introduction(), index(), shared(), fitRules(), ...descriptors.map(section)].join("\n\n") + "\n";
}

function introduction(): string {
  return `# Worksheet functions

Type these in a cell as you type SUM: \`=${namespace}.DELTA(B2, C2)\`. Functions that give a table fill the cells below and to the
right; leave those cells empty. This page is written from the functions themselves: run \`npm run docs\` after changing one.`;
}

function index(): string {
  return markdownTable([
    ["Function", "Gives"],
    ...descriptors.map(({ name, summary }) => [`[${name}](#${name.toLowerCase()})`, summary]),
  ]);
}

/** What holds for every function; `code` and **stress** as in Markdown. */
export const commonNotes: readonly string[] = [
  "A **chart** is a range with headings in its first row and figure names in its first column. Headings may name a unit in brackets, as in `Bust (in)`; without one, lengths are in mm. Columns may stand in any order.",
  "An empty cell for a needed argument gives a blank result. A blank within a range gives a blank at its place.",
  'An argument in square brackets may be left out, and an empty cell or a 0 for it means the same: some programs cannot tell them apart. Where you mean nothing at all, as in no layers, write `"none"`.',
  "No length is 0, and some spreadsheets pass 0 for an empty cell: where a length or a tolerance is wanted, 0 counts as empty.",
  "Numbers may also be typed as text, as in `5 3/8` or `13,65`. Functions that take plain lengths do not convert units: a text that names its unit is refused there, and `LENGTH` turns it into a number.",
  "`#VALUE!` means that something given cannot be used, `#N/A` that something is not in the chart. The message says what was read and what to do.",
];

function shared(): string {
  return `## What they have in common

${commonNotes.map((note) => `- ${note}`).join("\n")}

The examples use this chart under the name \`Figures\`, these tolerances under the name \`Tolerances\` and these patterns under the
name \`Patterns\`; results are rounded to three decimals.

${markdownTable(exampleChart)}

${markdownTable(exampleTolerances)}

${markdownTable(examplePatterns)}`;
}

/** What the verdicts of fit rest on, in tables. */
function fitRules(): string {
  return `## What the verdicts of fit rest on

**Openings.** An opening is measured shut and not stretched. What is not given and would decide is asked for: the verdict is then
“not known”.

${markdownTable(openingsTable)}

**Lengths.** Sleeve, inside leg and hem end where they are meant to: beside the figure that the pattern was drafted for, at the same
share of the way on every body; else within the stretch that Sleeves or Ends at names. They may be 3 % of the whole way (arm, inside leg,
waist to floor) off, and as far again a little short or long: a rule of the project’s own, about an inch on a full-size
inside leg, which a rule for armLength, insideLeg or outsideLeg (waist to floor) in your table of ease rules replaces. The way
from waist to floor is Outside leg, or Body rise and Inside leg together. What is not given is named as not judged.

**Measures without a rule.** What is given with a garment though no rule of its class names it is judged where common sense can: a girth has
to go round the body and may be as wide as it likes; a rise or crotch length may hang, but not pull; other lengths and widths begin and end
where the body’s own do, within 3 %. What nothing can be said of is named in REASONS as not judged, with the reason.

**Ease rules.** All of them are the project’s own: no published table for small figures was found, and published ease is for people who
breathe, sit and reach. Each says why; disagree with one line and change it in your table of ease rules. The percentage is of the
body, the mm are what turnings and a closure take up at every size. As far again below the least as the two are apart is snug (while it
closes), as far again above the most loose; half as far for lengths.

${markdownTable(easeRulesTable())}

**Further values of the project’s own.**

${markdownTable(ownValues)}

**Sleeves and legs.** The largest of what is measured counts, whichever way the garment goes on.

${markdownTable(limbsTable)}`;
}

function easeRulesTable(): readonly (readonly string[])[] {
  return [
    ["Garment class", "Measure", "Least", "Most", "Needed", "Why"],
    ...defaultEaseRules.map(({ garmentClass, measure, least, most, required, source }) => [
      garmentClass,
      measureById(measure)?.name ?? measure,
      easeText(least),
      easeText(most),
      required ? "yes" : "no",
      source.replace(/^The project’s own: /u, ""),
    ]),
  ];
}

/** “3 % + 1 mm” */
function easeText(amount: EaseAmount | undefined): string {
  if (!amount) return "no limit";
  const { percent, mm } = amount;
  const sign = mm < 0 ? "−" : "+";
  const share = `${String(percent).replace("-", "−")} %`;
  return mm === 0 ? share : `${share} ${sign} ${String(Math.abs(mm))} mm`;
}

const inPercent = (share: number): string => `${String(Math.round(share * 100))} %`;

/** What the verdicts rest on beside the ease rules, with the reason of each. */
const ownValues: readonly (readonly string[])[] = [
  ["What", "Value", "Why"],
  [
    "Share of a cloth’s stretch that is comfortable",
    inPercent(comfortableShare),
    "common practice; all of it is a garment that strains its seams",
  ],
  [
    "Reading error",
    `${String(usualReadingError.mm)} mm or ${String(usualReadingError.percent)} %, the larger`,
    "what a careful hand repeats with a tape on a small figure; closer calls are not made",
  ],
  [
    "Stiff, hard arm without a joint",
    `${inPercent(stiffArmFactor - 1)} more cuff`,
    "it goes in at a slant and cannot turn",
  ],
  ["Stuffed body", `gives by ${inPercent(1 - softBodyFactor)}`, "it can be squeezed through an opening"],
  [
    "Largest alteration that is offered",
    `${inPercent(largestShare)} of the garment’s own measure`,
    "beyond it seams and darts no longer lie where they belong",
  ],
  [
    "Lacing gap of a corset",
    `up to ${inPercent(corsetGap)} of the body`,
    "two fingers at a waist of a full-size person; a wider one pulls the bones askew",
  ],
  [
    "Design ease where a finished measure is not given",
    "half way between least and most",
    "nobody drafts to a limit",
  ],
];

function section(descriptor: FunctionDescriptor): string {
  const { name, summary, details, parameters, examples, failures, source } = descriptor;
  return [
    `## ${name}`,
    `\`${signature(descriptor)}\``,
    summary,
    ...(details ? [details] : []),
    markdownTable([["Argument", "What to give", "When left out"], ...parameters.map(parameterRow)]),
    "**Examples**",
    ...examples.map(example),
    "**Errors**",
    failures.map(({ when, shows }) => `- \`${shows}\`: ${when}`).join("\n"),
    ...(source ? [`**Source**: ${source}`] : []),
  ].join("\n\n");
}

/** `FIT.OVER(girth, thickness, [layers])` */
export function signature({ name, parameters }: FunctionDescriptor): string {
  const names = parameters.map((parameter) => (parameter.optional ? `[${parameter.name}]` : parameter.name));
  return `${namespace}.${name}(${names.join(", ")})`;
}

function parameterRow({ name, help, optional, standsFor }: NamedParameter): string[] {
  return [name, help, optional ? (standsFor ?? "") : "needed"];
}

function example({ formula, gives }: Example): string {
  return isLarge(gives)
    ? `\`=${formula}\` gives\n\n${markdownTable(gives)}`
    : `\`=${formula}\` gives ${inline(gives)}`;
}

function isLarge(result: Result): result is Table {
  return isTable(result) && result.length > 1 && (result[0]?.length ?? 0) > 1;
}

function inline(result: Result): string {
  const values = isTable(result) ? result.flat() : [result];
  return values.map((value) => (value === "" ? "(blank)" : `\`${String(value)}\``)).join(", ");
}

function markdownTable(rows: readonly (readonly unknown[])[]): string {
  const [headings = [], ...body] = rows.map((row) => row.map(inTable));
  return [headings, headings.map(() => "---"), ...body].map((row) => `| ${row.join(" | ")} |`).join("\n");
}

function inTable(value: unknown): string {
  return String(value).replaceAll("|", "\\|");
}
