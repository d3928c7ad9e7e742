import type { Cells } from "../../addin/chart/cell.ts";
import { cellText } from "../../addin/chart/cell.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import { sameName } from "../../addin/workbook/names.ts";
import type { TableInfo } from "../../addin/workbook/port.ts";
import type { FunctionDescriptor, NamedParameter, Table } from "../../functions/descriptor.ts";
import { isTable } from "../../functions/descriptor.ts";
import { namespace } from "../../functions/namespace.ts";
import { isGradeRuleTable } from "../../addin/chart/readGradeRules.ts";
import { columnNamed, tableColumns } from "../../addin/chart/tableRows.ts";
import { findFitTables } from "../fit/fitTables.ts";
import { chartTables } from "../shell/chartTables.ts";
import { failureText } from "../shell/notice.ts";

/** The tables of a workbook with what is in them, as far as examples use them. */
export interface Tables {
  readonly tables: readonly TableInfo[];
  /** By the name of the table; headings first. */
  readonly cells: ReadonlyMap<string, Cells>;
}

/** An argument of an example: what can be chosen for it, or that it is typed. */
export interface ArgumentField {
  readonly name: string;
  readonly help: string;
  readonly optional: boolean;
  /** What is offered; undefined where it is typed. `""` leaves the argument out. */
  readonly choices: readonly (readonly [value: string, name: string])[] | undefined;
  /** What may be typed, among other things. */
  readonly offered: readonly string[];
  /** What stands in it before anybody chooses. */
  readonly usual: string;
}

/** What was chosen or typed, by the name of the argument. */
export type Given = Readonly<Record<string, string>>;

/** What can be given to a function in this workbook, each with something to begin with. */
export function argumentFields(
  descriptor: FunctionDescriptor,
  tables: Tables,
  given: Given,
): readonly ArgumentField[] {
  const fields: ArgumentField[] = [];
  const chosen: Record<string, string> = {};
  descriptor.parameters.forEach((parameter, i) => {
    const field = fieldOf(descriptor, parameter, i, tables, chosen);
    fields.push(field);
    chosen[parameter.name] = given[parameter.name] ?? field.usual;
  });
  return fields;
}

function fieldOf(
  descriptor: FunctionDescriptor,
  parameter: NamedParameter,
  at: number,
  tables: Tables,
  chosen: Given,
): ArgumentField {
  const { name, help, optional, standsFor = "nothing" } = parameter;
  const leftOut = optional ? [["", `left out: ${standsFor}`] as const] : [];
  const choose = (values: readonly string[], usual = values[0] ?? ""): ArgumentField => ({
    ...{ name, help, optional, offered: [], usual: optional ? "" : usual },
    choices: [...leftOut, ...values.map((value) => [value, value] as const)],
  });
  const could = tablesFor(descriptor, parameter, tables);
  if (could) {
    const names = could.map((each) => each.name);
    // Bodies are another answer, not a better one.
    return { ...choose(names), usual: name === "bodies" ? "" : (names[0] ?? "") };
  }
  const chart = chosen.chart ?? chosen.figures;
  if (parameter.names === "figure" || parameter.names === "figures") {
    const figures = firstColumn(tables, chart);
    return choose(figures, name === "other" || name === "target" ? figures[1] : figures[0]);
  }
  if (parameter.names === "pattern") return choose(firstColumn(tables, chosen.patterns));
  if (name === "measure" && chart !== undefined) return choose(measuresIn(tables, chart));
  if (parameter.choices) {
    const words = parameter.choices.values.map(({ word, says }) => [word, `${word}: ${says}`] as const);
    return { ...choose([]), choices: [...leftOut, ...words], usual: optional ? "" : (words[0]?.[0] ?? "") };
  }
  const example = descriptor.examples[0]?.values[at];
  return {
    ...{ name, help, optional, choices: undefined },
    offered: parameter.shape === "range" ? columnsOf(tables) : [],
    usual: optional ? "" : typedExample(example),
  };
}

/** The tables that can be given, the usual one first; undefined for an argument that takes none. */
function tablesFor(
  { name: functionName }: FunctionDescriptor,
  { name, shape }: NamedParameter,
  { tables, cells }: Tables,
): readonly TableInfo[] | undefined {
  if (shape !== "range") return undefined;
  const found = findFitTables(tables);
  const first = (usual: string, some: readonly TableInfo[]): readonly TableInfo[] =>
    [...some].sort((a, b) => Number(sameName(b.name, usual)) - Number(sameName(a.name, usual)));
  switch (name) {
    case "chart":
    case "figures":
      return first("Figures", chartTables(tables));
    case "patterns":
      return first("Patterns", found.patterns);
    case "tolerances":
    case "bodies":
      return first("Tolerances", tables.filter(holdsTolerances));
    case "classes":
      return first("GarmentClasses", found.garmentClasses);
    case "rules":
      return functionName === "GRADE"
        ? first(
            "GradeRules",
            tables.filter((table) => isGradeRuleTable(cells.get(table.name) ?? [table.headings])),
          )
        : first("EaseRules", found.easeRules);
    default:
      return undefined;
  }
}

function holdsTolerances({ headings }: TableInfo): boolean {
  const columns = tableColumns([headings]);
  return columnNamed(columns, ["Measure"]) !== undefined && columnNamed(columns, ["Tolerance"]) !== undefined;
}

function firstColumn({ cells }: Tables, table: string | undefined): readonly string[] {
  const rows = (table === undefined ? undefined : cells.get(table)) ?? [];
  return [...new Set(rows.slice(1).map((row) => cellText(row[0])))].filter((name) => name !== "");
}

function measuresIn({ cells }: Tables, table: string | undefined): readonly string[] {
  const [headings = []] = (table === undefined ? undefined : cells.get(table)) ?? [];
  return tableColumns([headings])
    .filter(({ heading }) => heading.measure)
    .map(({ heading }) => heading.name);
}

/** `Figures[Bust (mm)]` for every measure of a chart. */
function columnsOf(tables: Tables): readonly string[] {
  return chartTables(tables.tables).flatMap((table) =>
    tableColumns([table.headings])
      .filter(({ heading }) => heading.measure)
      .map(({ written }) => `${table.name}[${escaped(written)}]`),
  );
}

/** What has a meaning of its own in the brackets of a column (ECMA-376 part 1, 18.17.6.1) has an apostrophe before it. */
function escaped(heading: string): string {
  return heading.replace(/['[\]#]/gu, "'$&");
}

function typedExample(example: unknown): string {
  if (!Array.isArray(example)) return String(example ?? "");
  return example
    .flat()
    .map((value) => String(value ?? ""))
    .join("; ");
}

/** What an example comes to. */
export interface LiveAnswer {
  readonly formula: string;
  /** A rectangle, if only of one cell; undefined where there is none. */
  readonly result: Table | undefined;
  /** Why there is none, in words. */
  readonly failure: string | undefined;
}

/** The formula of what was given, and what it gives in this workbook. */
export function workOut(
  descriptor: FunctionDescriptor,
  fields: readonly ArgumentField[],
  tables: Tables,
  given: Given,
): LiveAnswer {
  const texts = fields.map(({ name, usual }) => (given[name] ?? usual).trim());
  const arguments_ = texts.map((text, i) => argumentOf(descriptor, i, text, tables));
  const last = texts.findLastIndex((text) => text !== "");
  const formula = `=${namespace}.${descriptor.name}(${arguments_
    .slice(0, last + 1)
    .map(({ written }) => written)
    .join(", ")})`;
  const missing = fields.find(({ optional }, i) => !optional && texts[i] === "");
  if (missing) return { formula, result: undefined, failure: `${missing.name} is needed: ${missing.help}` };
  try {
    const result = descriptor.compute(arguments_.map(({ value }) => value));
    return { formula, result: isTable(result) ? result : [[result]], failure: undefined };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { formula, result: undefined, failure: failureText(error) };
  }
}

interface Argument {
  /** As it stands in the formula. */
  readonly written: string;
  readonly value: unknown;
}

function argumentOf(descriptor: FunctionDescriptor, at: number, text: string, tables: Tables): Argument {
  const parameter = descriptor.parameters[at];
  if (text === "" || !parameter) return { written: "", value: undefined };
  if (tablesFor(descriptor, parameter, tables))
    return { written: `${text}[#All]`, value: tables.cells.get(text) };
  const isName = parameter.names !== undefined || parameter.type === "text";
  if (!isName && parameter.shape === "range") {
    const column = columnValues(text, tables);
    if (column) return { written: text, value: column };
    const parts = text.split(";").map((part) => part.trim());
    if (parts.length > 1)
      return { written: `{${parts.map(literal).join(";")}}`, value: parts.map((part) => [plain(part)]) };
  }
  return isName ? { written: quoted(text), value: text } : { written: literal(text), value: plain(text) };
}

/** The cells of a column that is named as in a formula; undefined for anything else. */
function columnValues(text: string, { tables, cells }: Tables): Cells | undefined {
  const [, name = "", written = ""] = /^([^[\]]+)\[(.+)\]$/u.exec(text) ?? [];
  const table = tables.find((each) => sameName(each.name, name));
  const heading = written.replace(/'(['[\]#])/gu, "$1");
  const at = table?.headings.findIndex((each) => sameName(each, heading)) ?? -1;
  if (!table || at < 0) return undefined;
  return cells
    .get(table.name)
    ?.slice(1)
    .map((row) => [row[at]]);
}

const isNumber = (text: string): boolean => /^-?\d+(?:\.\d+)?$/u.test(text);
const plain = (text: string): string | number => (isNumber(text) ? Number(text) : text);
const literal = (text: string): string => (isNumber(text) ? text : quoted(text));
const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
