import { figureKey } from "../../addin/chart/find.ts";
import type { CallArgument, FormulaPart } from "../../addin/workbook/formulaParts.ts";
import { formulaParts, quotedText } from "../../addin/workbook/formulaParts.ts";
import { sameName } from "../../addin/workbook/names.ts";
import { descriptors } from "../../functions/all.ts";
import { namespace } from "../../functions/namespace.ts";
import type { Rename } from "./renames.ts";

/** What a formula has to do with a name that was changed. */
export interface NameInFormula {
  /** The formula with the new name; `undefined` where it does not say the old one. */
  readonly renamed: string | undefined;
  /** True where our functions are asked about the old name: then no other text is changed. */
  readonly isAsked: boolean;
  /** The cells that our functions read such a name from. */
  readonly asks: readonly FormulaPart[];
  /** Why a changed formula cannot be written, in words to follow “because”. */
  readonly closed: string | undefined;
}

// Source: Microsoft, “Excel specifications and limits”.
const longestText = 255;
const longestFormula = 8_192;

/**
 * Looks for the old name in a formula: as a whole text in an argument that names such a thing, of a function of ours that is
 * not asked about another table of the same kind. Case and spaces do not count, as for the functions.
 *
 * @param others the other tables of the workbook that hold such names
 */
export function nameInFormula(formula: string, rename: Rename, others: readonly string[]): NameInFormula {
  const parts = formulaParts(formula);
  const asked: Change[] = [];
  const elsewhere: Change[] = [];
  const asks: FormulaPart[] = [];
  let inList = false;
  for (const part of parts) {
    const call = part.within.find(({ name }) => name.startsWith(`${namespace}.`));
    const names = call && namesOf(call);
    const isAsked = names === rename.what || (names === "figures" && rename.what === "figure");
    const isOther = call !== undefined && isAboutOther(parts, call, rename.table, others);
    if (isAsked && !isOther && part.kind !== "text") asks.push(part);
    if (part.kind !== "text" || (isAsked && isOther)) continue;
    const text =
      isAsked && names === "figures" ? renamedInList(part.text, rename) : renamedText(part.text, rename);
    if (text === undefined) continue;
    (isAsked ? asked : elsewhere).push({ ...part, text });
    inList ||= isAsked && separator.test(part.text) && separator.test(rename.to);
  }
  const isAboutIt = asked.length > 0;
  const changes = isAboutIt ? asked : elsewhere;
  const renamed = changes.length > 0 ? withTexts(formula, changes) : undefined;
  const closed = inList ? listClosed : closedBy(changes, renamed);
  return { renamed, isAsked: isAboutIt, asks, closed };
}

/** The new name for a text that is the old one; `undefined` for any other. */
export function renamedText(text: string, { from, to }: Pick<Rename, "from" | "to">): string | undefined {
  const key = figureKey(text);
  return text !== to && from.some((name) => figureKey(name) === key) ? to : undefined;
}

/** The same for a list of names with commas, semicolons or line breaks between them, in which all else stays. */
export function renamedInList(text: string, rename: Pick<Rename, "from" | "to">): string | undefined {
  const whole = renamedText(text, rename);
  if (whole !== undefined || !separator.test(text)) return whole;
  const parts = text.split(/([,;\n])/u).map((part) => {
    const name = renamedText(part.trim(), rename);
    return name === undefined ? part : part.replace(part.trim(), () => name);
  });
  const changed = parts.join("");
  return changed === text ? undefined : changed;
}

/** What stands between the names of a list. */
export const separator = /[,;\n]/u;

/** Why a name that holds a separator itself cannot stand in a list of names. */
export const listClosed = "it is a list with commas between the names, and the new name has one itself";

type Change = Extract<FormulaPart, { kind: "text" }>;

function withTexts(formula: string, changes: readonly Change[]): string {
  // From the end, so that places stay true.
  return changes
    .toSorted((a, b) => b.start - a.start)
    .reduce(
      (text, { start, end, text: name }) => text.slice(0, start) + quotedText(name) + text.slice(end),
      formula,
    );
}

function namesOf({ name, argument }: CallArgument): "figure" | "figures" | "pattern" | undefined {
  const descriptor = descriptors.find((each) => `${namespace}.${each.name}` === name);
  return descriptor?.parameters[argument]?.names;
}

/** True where a call names other tables of that kind and not the one in question. */
function isAboutOther(
  parts: readonly FormulaPart[],
  { call }: CallArgument,
  table: string,
  others: readonly string[],
): boolean {
  const tables = parts.flatMap((part) =>
    part.kind === "table" && part.table !== undefined && part.within.some((each) => each.call === call)
      ? [part.table]
      : [],
  );
  const isNamed = (wanted: string): boolean => tables.some((name) => sameName(name, wanted));
  return !isNamed(table) && others.some(isNamed);
}

function closedBy(changes: readonly Change[], formula = ""): string | undefined {
  if (changes.some(({ text }) => text.length > longestText))
    return `a text in a formula has at most ${String(longestText)} characters`;
  return formula.length > longestFormula
    ? `a formula has at most ${longestFormula.toLocaleString("en-GB")} characters`
    : undefined;
}
