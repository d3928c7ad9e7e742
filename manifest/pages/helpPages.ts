import { descriptors } from "../../functions/all.ts";
import type { Example, FunctionDescriptor, NamedParameter, Result } from "../../functions/descriptor.ts";
import { isTable } from "../../functions/descriptor.ts";
import { exampleChart, exampleTolerances } from "../../functions/exampleChart.ts";
import { examplePatterns } from "../../functions/examplePatterns.ts";
import { namespace } from "../../functions/namespace.ts";
import { questions } from "../../functions/questions.ts";
import { commonNotes, signature } from "../../functions/reference.ts";
import { helpFile } from "../addIn.ts";
import { escapeHtml, htmlTable, pageFrame, paragraphs } from "./pageFrame.ts";

/** A help page for each function and one that lists them all, by the file that each is built as. */
export function helpPages(): Readonly<Record<string, string>> {
  return Object.fromEntries([
    ["help/index.html", indexPage()],
    ...descriptors.map((descriptor) => [helpFile(descriptor.name), functionPage(descriptor)] as const),
  ]);
}

function indexPage(): string {
  const summaryOf = new Map(descriptors.map(({ name, summary }) => [name, summary]));
  const entry = (name: string) =>
    `<dt><a href="${fileName(name)}">${escapeHtml(name)}</a></dt><dd>${escapeHtml(summaryOf.get(name) ?? "")}</dd>`;
  const body = [
    `<p class="lead">Type these in a cell as you type SUM: <code>=${namespace}.DELTA(B2, C2)</code>.</p>`,
    "<p>Functions that give a table fill the cells below and to the right; leave those cells empty.</p>",
    ...questions.flatMap(({ question, names }) => [
      `<h2>${escapeHtml(question)}</h2>`,
      `<dl>\n${names.map(entry).join("\n")}\n</dl>`,
    ]),
    "<h2>What they have in common</h2>",
    `<ul>\n${commonNotes.map((note) => `<li>${withCode(note)}</li>`).join("\n")}\n</ul>`,
    '<h2 id="examples">What the examples use</h2>',
    `<p>The examples call this chart <code>Figures</code>, these tolerances <code>Tolerances</code> and these patterns <code>Patterns</code>. Results are rounded to three decimals.</p>`,
    htmlTable("Figures of the examples", exampleChart),
    htmlTable("Tolerances of the examples", exampleTolerances),
    htmlTable("Patterns of the examples", examplePatterns),
  ];
  return pageFrame({
    title: "All functions",
    description: "The worksheet functions of Measure Book, by what you want to know.",
    body: body.join("\n"),
    up: "../",
  });
}

function functionPage(descriptor: FunctionDescriptor): string {
  const { name, summary, details, parameters, examples, failures, source } = descriptor;
  const body = [
    `<p class="lead">${escapeHtml(summary)}</p>`,
    `<p class="formula"><code>=${escapeHtml(signature(descriptor))}</code></p>`,
    ...(details ? [paragraphs(details)] : []),
    "<h2>What to give</h2>",
    `<dl>\n${parameters.map(argument).join("\n")}\n</dl>`,
    `<h2>${examples.length > 1 ? "Examples" : "Example"}</h2>`,
    ...examples.map(exampleOf),
    '<p class="quiet">The <a href="index.html#examples">tables of the examples</a> stand on the page of all functions.</p>',
    "<h2>When it cannot answer</h2>",
    `<ul>\n${failures.map(({ when, shows }) => `<li><code>${shows}</code>: ${escapeHtml(when)}</li>`).join("\n")}\n</ul>`,
    "<p>Click the cell: the message says what was read and what to do.</p>",
    ...(source ? [`<p class="quiet">Source: ${escapeHtml(source)}</p>`] : []),
  ];
  return pageFrame({
    title: `${namespace}.${name}`,
    description: summary,
    body: body.join("\n"),
    up: "../",
  });
}

function argument({ name, help, optional, standsFor, choices }: NamedParameter): string {
  const left = optional ? `When left out: ${standsFor ?? "nothing"}.` : "Needed.";
  const words = choices?.values.map(
    ({ word, says }) => `<li><code>${escapeHtml(word)}</code> – ${escapeHtml(says)}</li>`,
  );
  return [
    `<dt><code>${escapeHtml(name)}</code></dt>`,
    `<dd>${escapeHtml(help)} <span class="quiet">${escapeHtml(left)}</span>`,
    ...(words ? [`<ul>\n${words.join("\n")}\n</ul>`] : []),
    "</dd>",
  ].join("\n");
}

function exampleOf({ formula, gives }: Example): string {
  const typed = `<p class="formula"><code>=${escapeHtml(formula)}</code></p>`;
  return isTable(gives) && gives.length > 1
    ? `${typed}\n${htmlTable(`What ${formula} gives`, gives)}`
    : `${typed}\n<p>gives ${inLine(gives)}</p>`;
}

function inLine(result: Result): string {
  const values = isTable(result) ? result.flat() : [result];
  return values
    .map((value) => (value === "" ? "a blank" : `<code>${escapeHtml(String(value))}</code>`))
    .join(", ");
}

/** As it is called from a page beside it. */
function fileName(name: string): string {
  return helpFile(name).replace("help/", "");
}

/** A note of the reference as HTML: `code` and **stress** are all that occurs in it. */
function withCode(note: string): string {
  return escapeHtml(note)
    .replaceAll(/`([^`]+)`/g, "<code>$1</code>")
    .replaceAll(/\*\*([^*]+)\*\*/g, "<strong>$1</strong>");
}
