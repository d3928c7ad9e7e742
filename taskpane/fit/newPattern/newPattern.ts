import type { Cell, Cells } from "../../../addin/chart/cell.ts";
import { cellText, isBlank } from "../../../addin/chart/cell.ts";
import type { Chart } from "../../../addin/chart/chart.ts";
import type { EaseRule } from "../../../addin/chart/easeRule.ts";
import { figureKey } from "../../../addin/chart/find.ts";
import type { GarmentClass } from "../../../addin/chart/garmentClass.ts";
import type { OpeningPlace } from "../../../addin/chart/garmentTerms.ts";
import { coveredMeasures } from "../../../addin/chart/garmentClass.ts";
import { endPlaces, sleeveKinds } from "../../../addin/chart/garmentTerms.ts";
import type { Pattern, PatternTable } from "../../../addin/chart/pattern.ts";
import type { PatternKey } from "../../../addin/chart/patternKeys.ts";
import {
  columnFor,
  finishedName,
  holdsLengths,
  stretchText,
  usualHeading,
} from "../../../addin/chart/patternKeys.ts";
import { codeKey, patternColumns, readPatternTable } from "../../../addin/chart/readPatterns.ts";
import type { TableColumn } from "../../../addin/chart/tableRows.ts";
import { placeIn } from "../../../addin/chart/tableRows.ts";
import type { Asked } from "../../../addin/fit/asked.ts";
import { askedOf } from "../../../addin/fit/asked.ts";
import { garmentContext } from "../../../addin/fit/match.ts";
import { InputError } from "../../../addin/measures/inputError.ts";
import { parseReading } from "../../../addin/measures/parseReading.ts";
import type { LengthUnit } from "../../../addin/measures/units.ts";
import { fromMm } from "../../../addin/measures/units.ts";
import type { Edit, TableInfo } from "../../../addin/workbook/port.ts";
import { aboutLength } from "../../ui/words.ts";

/** What the form asks: what belongs into a column of the table of patterns. */
export type FieldKey = PatternKey;

/** What was typed or chosen, as it was written. */
export type Answers = Readonly<Partial<Record<FieldKey, string>>>;

/** A question of the form. */
export interface PatternField {
  readonly key: FieldKey;
  readonly label: string;
  readonly kind: "text" | "length" | "choice" | "figure" | "codes";
  readonly hint?: string;
  readonly choices?: readonly (readonly [value: string, name: string])[];
  /** Of a length that names none. */
  readonly unit?: LengthUnit;
  /** The measure whose place on the body shows where it is. */
  readonly shows?: string | undefined;
}

/** The table that the pattern is added to; without one, it is made. */
export interface PatternsPlace {
  readonly table: TableInfo | undefined;
  /** Headings first. */
  readonly cells: Cells;
  readonly formats: readonly (readonly string[])[];
  /** Of headings that are added. */
  readonly unit: LengthUnit;
}

/** What the workbook says that the pattern is held against. */
export interface Wardrobe {
  readonly chart: Chart;
  readonly place: PatternsPlace;
  readonly classes: readonly GarmentClass[];
  readonly rules: readonly EaseRule[] | undefined;
  /** Codes of the patterns that are there, with their titles and classes. */
  readonly known: PatternTable;
}

/** A code that nobody has yet: the last one’s letters with the next number. */
export function nextCode(codes: readonly string[]): string {
  const [, letters = "", digits = ""] = /^(.*?)(\d*)$/u.exec(codes.at(-1) ?? "P") ?? [];
  const taken = new Set(codes.map(codeKey));
  for (let number = Number(digits) + 1; ; number++) {
    const code = `${letters}${String(number)}`;
    if (!taken.has(codeKey(code))) return code;
  }
}

/** The garment class that was chosen, if any. */
export function classOf({ classes }: Wardrobe, answers: Answers): GarmentClass | undefined {
  return classes.find(({ name }) => name === answers.garmentClass);
}

/** The garment as far as it is known, whatever else is still wrong or missing. */
function draftOf(wardrobe: Wardrobe, answers: Answers, garmentClass: GarmentClass): Pattern {
  const { opens } = answers;
  const draftedFor = wardrobe.chart.figures.findIndex(
    (figure) => figureKey(figure) === figureKey(answers.draftedFor ?? ""),
  );
  const onHips = garmentClass.wornOn === "hips" || garmentClass.wornOn === "hips and legs";
  const sleeve = sleeveKinds.find((each) => each === sleevesOf(answers, garmentClass));
  const endsAt = endPlaces.find((each) => each === endOf(answers, garmentClass));
  return {
    code: answers.code ?? "",
    title: "",
    garmentClass,
    ...(draftedFor >= 0 && { draftedFor }),
    stretch: 0,
    thicknessMm: 0,
    wornOver: [],
    closure:
      opens === "full length"
        ? opens
        : opens === undefined || opens === "none"
          ? "none"
          : onHips
            ? "waist"
            : "neck",
    ...(sleeve && { sleeve }),
    ...(endsAt && { endsAt }),
    finished: new Map(),
  };
}

function sleevesOf({ sleeve }: Answers, garmentClass: GarmentClass): string {
  return sleeve ?? garmentClass.sleeve ?? (garmentClass.wornOn === "arm" ? "long" : "none");
}

function endOf({ endsAt }: Answers, garmentClass: GarmentClass): string {
  return endsAt ?? garmentClass.endsAt ?? "";
}

/** The questions for a garment, in the order in which they are asked: those of its class alone, and the class first. */
export function fieldsOf(
  wardrobe: Wardrobe,
  answers: Answers,
  sound: Pattern | undefined,
): readonly PatternField[] {
  const { classes, chart, rules, known, place } = wardrobe;
  const classField: PatternField = {
    key: "garmentClass",
    label: "What is it?",
    kind: "choice",
    choices: [["", "Choose …"], ...classes.map(({ name }) => [name, name] as const)],
  };
  const garmentClass = classOf(wardrobe, answers);
  if (!garmentClass) return [classField];
  const pattern = sound ?? draftOf(wardrobe, answers, garmentClass);
  const asked = askedOf(pattern, garmentContext([...layersFor(wardrobe, pattern), pattern], chart, rules));
  const under = known.patterns.filter((each) => sharesPlace(each.garmentClass, garmentClass));
  return [
    classField,
    { key: "code", label: "Its code", kind: "text", hint: "Short, and its own. Other rows call it by this." },
    { key: "title", label: "Title", kind: "text", hint: "The name that you sell it under." },
    {
      key: "draftedFor",
      label: "Drafted for",
      kind: "figure",
      hint:
        chart.figures.length === 0
          ? "There is no figure in your chart yet; leave it empty."
          : "A figure of your chart. What you leave empty is taken from its body, with the usual ease.",
    },
    ...partFields(asked, answers, garmentClass),
    ...openingFields(asked, answers, pattern),
    {
      key: "stretch",
      label: "How far the cloth stretches, in %",
      kind: "text",
      hint: "Woven cloth: leave it empty.",
    },
    { key: "thickness", label: "Thickness of the cloth", kind: "length", hint: "Of one layer." },
    ...(under.length === 0
      ? []
      : [
          {
            key: "wornOver",
            label: "Worn over",
            kind: "codes",
            hint: "Codes of what is worn right under it, with commas.",
            choices: under.map(({ code, title }) => [code, title] as const),
          } as const,
        ]),
    ...asked.measures.map(({ measure, needed, assumedMm }): PatternField => {
      const unit = chart.measures.find(({ key }) => key === measure)?.unit ?? place.unit;
      return {
        key: `finished ${measure}`,
        label: `Finished ${finishedName(measure)}`,
        kind: "length",
        shows: measure,
        hint: Number.isNaN(assumedMm)
          ? needed
            ? "Of the garment itself. Without it nobody can say whether it fits."
            : "Of the garment itself, if you know it."
          : `Of the garment itself. Empty: about ${aboutLength(assumedMm, unit)}, as drafted.`,
      };
    }),
  ];
}

function partFields(asked: Asked, answers: Answers, garmentClass: GarmentClass): readonly PatternField[] {
  const fields: PatternField[] = [];
  if (asked.sleeves) {
    const usual = sleevesOf({}, garmentClass);
    fields.push({
      key: "sleeve",
      label: "Sleeves",
      kind: "choice",
      choices: [...sleeveKinds]
        .filter((kind) => garmentClass.wornOn !== "arm" || kind !== "none")
        .sort((a, b) => Number(b === usual) - Number(a === usual))
        .map((kind) => [kind, kind] as const),
    });
  }
  if (asked.ends.length > 0) {
    const usual = endOf({}, garmentClass);
    fields.push({
      key: "endsAt",
      label: garmentClass.wornOn === "leg" ? "Reaches up to" : "Ends at",
      kind: "choice",
      choices: [
        ...(usual === "" ? [["", "not said"] as const] : [[usual, usual] as const]),
        ...asked.ends.filter((place) => place !== usual).map((place) => [place, place] as const),
      ],
    });
  }
  if (asked.lengths.includes("hem")) {
    fields.push({
      key: "length",
      label: "Length",
      kind: "length",
      shows: garmentClass.wornOn === "hips" ? "outsideLeg" : "backWaistLength",
      hint: `From the ${garmentClass.wornOn === "hips" ? "waist" : "back of the neck"} to the hem, if you know it.`,
    });
  }
  for (const measure of ["armLength", "insideLeg"] as const) {
    if (!asked.lengths.includes(measure)) continue;
    fields.push({
      key: `finished ${measure}`,
      label: measure === "armLength" ? "Length of the sleeve" : "Inside leg",
      kind: "length",
      shows: measure,
      hint:
        measure === "armLength" ? "From the shoulder, if you know it." : "Of the garment, if you know it.",
    });
  }
  return fields.filter(
    ({ key }) => key !== "finished armLength" || sleevesOf(answers, garmentClass) !== "none",
  );
}

const openingHints: Readonly<Record<OpeningPlace, string>> = {
  neck: "Around the finished neck edge, closures shut, not stretched.",
  cuff: "Around the finished sleeve end, not stretched.",
  hem: "Around the finished leg end, where it is narrowest, not stretched.",
  waist: "Around the finished waist edge, or the elastic when it is stretched.",
};

function openingFields(asked: Asked, { opens }: Answers, pattern: Pattern): readonly PatternField[] {
  const { wornOn } = pattern.garmentClass;
  const isOpened = opens !== undefined && opens !== "none" && opens !== "full length";
  return [
    ...(asked.opens.length === 0
      ? []
      : [
          {
            ...({ key: "opens", label: "Where it opens", kind: "choice" } as const),
            choices: asked.opens.map((each) => [each, opensNames[each] ?? each] as const),
          },
        ]),
    ...(isOpened && asked.opens.length > 0
      ? [
          {
            ...({ key: "openingLength", label: "How long that opening is", kind: "length" } as const),
            hint: `From the ${wornOn === "hips" || wornOn === "hips and legs" ? "waist" : opens === "side" ? "waist, both ways" : "neck"} down.`,
            shows: wornOn === "hips" || wornOn === "hips and legs" ? "waistToHip" : "backWaistLength",
          },
        ]
      : []),
    ...asked.openings.map(({ place, needed }): PatternField => ({
      key: place,
      label: `${place.charAt(0).toUpperCase()}${place.slice(1)} opening`,
      kind: "length",
      hint: `${openingHints[place]}${needed ? "" : " If you know it."}`,
      shows: openingMeasure(place, pattern),
    })),
  ];
}

const opensNames: Readonly<Record<string, string>> = {
  none: "nowhere: it is pulled on",
  "full length": "down its whole length",
  back: "at the back",
  front: "in front",
  side: "at the side",
};

/** The measure of the body at an opening, to show where it is. */
function openingMeasure(place: OpeningPlace, { sleeve, endsAt, garmentClass }: Pattern): string {
  switch (place) {
    case "neck":
      return "neckBaseGirth";
    case "waist":
      return "waistGirth";
    case "cuff":
      return sleeve === "short" ? "upperArmGirth" : sleeve === "elbow" ? "elbowGirth" : "wristGirth";
    case "hem": {
      if (garmentClass.wornOn === "leg" || garmentClass.wornOn === "foot") return "ankleGirth";
      const ends = { thigh: "midThighGirth", knee: "kneeGirth", calf: "calfGirth" };
      return endsAt === "thigh" || endsAt === "knee" || endsAt === "calf" ? ends[endsAt] : "ankleGirth";
    }
  }
}

function sharesPlace(one: GarmentClass, other: GarmentClass): boolean {
  const covered = coveredMeasures[one.wornOn];
  return coveredMeasures[other.wornOn].some((measure) => covered.includes(measure));
}

/** Everything that is worn under a pattern, however deep. */
function layersFor({ known }: Wardrobe, pattern: Pattern): readonly Pattern[] {
  const byCode = new Map(known.patterns.map((each) => [codeKey(each.code), each]));
  const found = new Set<Pattern>();
  const walk = ({ wornOver }: Pattern): void => {
    for (const code of wornOver) {
      const layer = byCode.get(codeKey(code));
      if (!layer || found.has(layer)) continue;
      found.add(layer);
      walk(layer);
    }
  };
  walk(pattern);
  return [...found];
}

/** The row of a pattern: what stands in which column, those that are added among them. */
export interface PatternRow {
  /** Columns that the table lacks, in the order in which they are added on the right. */
  readonly added: readonly string[];
  /** One cell a column, those added at the end. */
  readonly cells: readonly Cell[];
  /** What is written, by the heading of its column. */
  readonly says: readonly (readonly [heading: string, text: string])[];
}

/** What the form makes of its answers. */
export interface Draft {
  readonly row: PatternRow;
  readonly fields: readonly PatternField[];
  /** The pattern as it would be read from the table; undefined where it cannot be. */
  readonly pattern: Pattern | undefined;
  /** The patterns worn under it. */
  readonly layers: readonly Pattern[];
  /** Why it cannot be, beside the question that it is about; without one it is about the row. */
  readonly problem: { readonly key: FieldKey | undefined; readonly says: string } | undefined;
}

/** Reads the answers as the table will be read with them in it. */
export function readDraft(wardrobe: Wardrobe, answers: Answers): Draft {
  const first = readWith(wardrobe, answers, fieldsOf(wardrobe, answers, undefined));
  if (!first.pattern) return first;
  // With cloth and layers known, what is assumed can be told.
  const told = fieldsOf(wardrobe, answers, first.pattern);
  const hintOf = ({ key, hint }: PatternField): string | undefined =>
    told.find((each) => each.key === key)?.hint ?? hint;
  const fields = first.fields.map((field): PatternField => {
    const hint = hintOf(field);
    return hint === undefined ? field : { ...field, hint };
  });
  return { ...first, fields };
}

function readWith(wardrobe: Wardrobe, answers: Answers, asked: readonly PatternField[]): Draft {
  const { place, chart, classes } = wardrobe;
  const columns = patternColumns(place.cells, { formats: place.formats });
  const fields = asked.map((field): PatternField =>
    field.kind === "length"
      ? { ...field, unit: columnFor(columns, field.key)?.heading.unit ?? place.unit }
      : field,
  );
  const found = fields.map((field) => ({
    field,
    column: columnFor(columns, field.key),
    text: textOf(answers, field).trim(),
  }));
  const lacking = found.filter(({ column, text }) => !column && text !== "");
  const width = place.cells[0]?.length ?? 0;
  const added = lacking.map(({ field }) => usualHeading(field.key, place.unit));
  const line: Cell[] = Array.from({ length: width + added.length }, () => undefined);
  const says: (readonly [string, string])[] = [];
  const places = new Map<FieldKey, number>();
  for (const { field, column, text } of found) {
    if (text === "") continue;
    const at = column?.position ?? width + lacking.findIndex((each) => each.field === field);
    places.set(field.key, at);
    line[at] = cellFor(field.key, text, column?.heading.unit ?? place.unit);
    says.push([column?.written ?? usualHeading(field.key, place.unit), cellText(line[at])]);
  }
  const pad = (row: readonly Cell[]): readonly Cell[] => [...row, ...added.map(() => undefined)];
  const rows = place.cells.slice(1).map(pad);
  const headings = [...(place.cells[0] ?? []), ...added];
  const row = { added, cells: line, says };
  const unread = { row, fields, pattern: undefined, layers: [] };
  try {
    const formats = [
      ...place.formats.map((each) => [...each, ...added.map(() => "General")]),
      headings.map(() => "General"),
    ];
    const columnsNow = patternColumns([headings, ...rows], { formats });
    const whole = found.map(({ field }) => ({ field, column: columnFor(columnsNow, field.key) }));
    const read = readPatternTable([headings, ...rows, line], chart, { formats, classes });
    const problem = read.problems.find((each) => each.row === rows.length + 1);
    const pattern = problem
      ? undefined
      : read.patterns.find(({ code }) => codeKey(code) === codeKey(answers.code ?? ""));
    if (!pattern) return { ...unread, problem: problemAt(problem?.message ?? "", whole, rows.length + 1) };
    return { row, fields, pattern, layers: layersFor(wardrobe, pattern), problem: undefined };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { ...unread, problem: { key: undefined, says: error.message } };
  }
}

/** What the row says: a choice that was not touched says what stands in it first. */
export function textOf(answers: Answers, { key, choices, kind }: PatternField): string {
  const typed = answers[key];
  if (kind !== "choice" || key === "garmentClass") return typed ?? "";
  return choices?.find(([value]) => value === typed)?.[0] ?? choices?.[0]?.[0] ?? "";
}

/** Plain lengths become numbers in the unit of the column; fractions stay as they were written; a stretch keeps its sign. */
function cellFor(key: FieldKey, text: string, unit: LengthUnit): Cell {
  if (key === "stretch") return stretchText(text);
  if (!holdsLengths(key)) return text;
  const reading = parseReading(text, { unit });
  if (reading.kind !== "length" || reading.origin !== undefined) return text;
  if (unit === "in" && /[/⁄¼-¾⅐-⅞]/u.test(text)) return text;
  return Number(fromMm(reading.mm, unit).toFixed(4));
}

function problemAt(
  message: string,
  found: readonly { readonly field: PatternField; readonly column: TableColumn | undefined }[],
  row: number,
): Draft["problem"] {
  const inRow = { row, table: "patterns", cells: [], formats: undefined };
  for (const { field, column } of found) {
    const before = column && `${placeIn(inRow, column)}: `;
    if (before !== undefined && message.startsWith(before))
      return { key: field.key, says: sentence(message.slice(before.length)) };
  }
  const before = `${placeIn(inRow)}, `;
  return { key: undefined, says: message.startsWith(before) ? message.slice(before.length) : message };
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The edits that add the row to a table: its columns first, then the first row that is empty, else one below. */
export function rowEdits(
  { cells, table }: PatternsPlace & { readonly table: TableInfo },
  row: PatternRow,
): {
  readonly edits: readonly Edit[];
  /** Row on the sheet, from 0. */
  readonly at: number;
} {
  const { area, name } = table;
  const columns = row.added.map((heading): Edit => ({
    kind: "column",
    table: name,
    heading,
    values: Array.from({ length: area.rows - 1 }, () => undefined),
  }));
  const empty = cells.findIndex((each, i) => i > 0 && each.every(isBlank));
  if (empty < 0)
    return {
      edits: [...columns, { kind: "rows", table: name, rows: [row.cells] }],
      at: area.row + area.rows,
    };
  const at = { sheet: area.sheet, row: area.row + empty, column: area.column };
  const filled = row.cells.map((value) => (value === undefined ? undefined : { value }));
  return { edits: [...columns, { kind: "cells", at, cells: [filled] }], at: at.row };
}
