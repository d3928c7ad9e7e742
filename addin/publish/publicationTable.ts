import type { Cells } from "../chart/cell.ts";
import { cellText, isBlank } from "../chart/cell.ts";
import { headingKey } from "../measures/headingKey.ts";
import { InputError } from "../measures/inputError.ts";
import { didYouMean } from "../measures/nearNames.ts";
import { quote } from "../measures/quote.ts";
import type { Publication } from "./publication.ts";
import { languages, publicationSchema, publishedUnits, roundings, usualPublication } from "./publication.ts";

/** One setting of the table: its name, what it holds, and how its values are written. A list has a row for each value. */
interface Setting {
  readonly key: keyof Publication;
  readonly name: string;
  readonly kind: "text" | "yes or no" | "list" | "where" | "patterns";
  /** What may stand there, for messages. */
  readonly choices?: readonly string[];
}

const settings: readonly Setting[] = [
  { key: "title", name: "Title", kind: "text" },
  { key: "maker", name: "Maker’s line", kind: "text" },
  { key: "date", name: "Date", kind: "text" },
  { key: "note", name: "Note", kind: "text" },
  { key: "language", name: "Language", kind: "text", choices: languages },
  { key: "units", name: "Unit", kind: "list", choices: publishedUnits },
  { key: "rounding", name: "Rounded", kind: "text", choices: roundings },
  { key: "figures", name: "Figure", kind: "list" },
  { key: "bodies", name: "All with the body of", kind: "list" },
  { key: "where", name: "Figures where", kind: "where" },
  { key: "measures", name: "Measure", kind: "list" },
  { key: "patterns", name: "Pattern", kind: "patterns" },
  { key: "sharedRows", name: "One row for a shared body", kind: "yes or no" },
  { key: "flagged", name: "Readings that Check doubts", kind: "yes or no" },
  { key: "estimated", name: "Estimated readings", kind: "yes or no" },
  { key: "fitPage", name: "Answers for other figures", kind: "yes or no" },
  { key: "showCautions", name: "Cautions", kind: "yes or no" },
  { key: "cautions", name: "Caution of my own", kind: "list" },
  { key: "drawings", name: "Drawings and how to measure", kind: "yes or no" },
  { key: "paper", name: "Paper", kind: "text", choices: ["A4", "Letter"] },
];

const none = "none";

/** A publication as a table with the headings Setting and Value. Lists that are empty, which means all, have no row. */
export function publicationCells(publication: Publication): Cells {
  return [
    ["Setting", "Value"],
    ...settings.flatMap(({ key, name, kind }) =>
      valuesOf(publication, key, kind).map((value) => [name, value]),
    ),
  ];
}

function valuesOf(
  publication: Publication,
  key: keyof Publication,
  kind: Setting["kind"],
): readonly string[] {
  const value = publication[key];
  if (kind === "where") return publication.where.map((each) => `${each.heading} = ${each.value}`);
  if (kind === "patterns" && publication.patterns?.length === 0) return [none];
  if (typeof value === "boolean") return [value ? "yes" : "no"];
  if (typeof value === "string") return [value];
  return (value ?? []).map(String);
}

/**
 * A publication from its table; what has no row is as usual.
 *
 * @throws {InputError} naming the row of what is not a setting, or of a value that it cannot have
 */
export function readPublication(cells: Cells): Publication {
  const given: Partial<Record<keyof Publication, unknown>> = {};
  for (const [row, [first, second]] of cells.entries()) {
    if (row === 0 || isBlank(first)) continue;
    const name = cellText(first);
    const where = `Row ${String(row + 1)} of the publication`;
    const setting = settings.find((each) => headingKey(each.name) === headingKey(name));
    if (!setting) {
      const names = settings.map((each) => each.name);
      throw new InputError(`${where}: ${quote(name)} is not a setting.${didYouMean(name, names)}`);
    }
    if (isBlank(second) && setting.kind !== "text") continue;
    const value = valueOf(setting, cellText(second), `${where}, ${setting.name}`);
    const isList = setting.kind !== "text" && setting.kind !== "yes or no";
    given[setting.key] = isList ? [...listOf(given[setting.key]), ...listOf(value)] : value;
  }
  const read = publicationSchema.safeParse({ ...usualPublication, ...given });
  if (read.success) return read.data;
  const [issue] = read.error.issues;
  const setting = settings.find(({ key }) => key === issue?.path[0]);
  throw new InputError(
    `The publication, ${setting?.name ?? "settings"}: ${issue?.message ?? "cannot be read"}.`,
  );
}

function listOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

function valueOf({ kind, choices }: Setting, text: string, where: string): unknown {
  switch (kind) {
    case "yes or no": {
      const word = text.toLowerCase();
      if (!["yes", "no", "true", "false"].includes(word))
        throw new InputError(`${where}: ${quote(text)} is neither yes nor no.`);
      return word === "yes" || word === "true";
    }
    case "where": {
      const [heading = "", ...values] = text.split("=");
      const value = values.join("=").trim();
      if (heading.trim() === "" || value === "")
        throw new InputError(
          `${where}: ${quote(text)} does not name a column and a word. Write it like Line = Marsh.`,
        );
      return [{ heading: heading.trim(), value }];
    }
    case "patterns":
      return text.toLowerCase() === none ? [] : [text];
    default: {
      const known = choices?.find((choice) => headingKey(choice) === headingKey(text));
      if (choices && known === undefined && text !== "")
        throw new InputError(
          `${where}: ${quote(text)} cannot stand here. Use ${choices.map(quote).join(", ")}.`,
        );
      const value = known ?? text;
      return kind === "list" ? [value] : value;
    }
  }
}
