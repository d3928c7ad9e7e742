import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { defaultGarmentClasses } from "../../addin/chart/garmentClass.ts";
import { zoneChoices } from "../../addin/similarity/columns.ts";
import { linkageMethods } from "../../addin/similarity/linkage.ts";
import { descriptors } from "../../functions/all.ts";
import { functionsJson } from "../../functions/metadata.ts";
import { defaultEaseRules } from "../../addin/chart/defaultEaseRules.ts";
import { measureById } from "../../addin/measures/dictionary.ts";
import { referenceMarkdown } from "../../functions/reference.ts";
import { addresses } from "../../manifest/addIn.ts";
import { loadFunctions } from "./loadFunctions.ts";

/** The functions that are planned for this release. */
const planned = [
  "LENGTH", "TAPE", "TEM", "FLAGS", "SCORE", "EXPECTED", "DELTA", "COMPARE", "OVER", "EASE", "EASECHECK", "CLEARANCE", "WHATFITS", "REASONS",
  "WEARERS", "WARDROBE", "LISTINGWORDS", "STEPS", "GRADE", "RESIZE", "FLARE", "DARTS", "FIGURESCALE",
  "APART", "NEAREST", "SHARES", "GROUPS", "TREE", "BASES", "MEASURENEXT",
]; // prettier-ignore

/**
 * The custom functions metadata, written after Microsoft’s page “Manually create JSON metadata for custom functions in
 * Excel”: names of letters, digits, dots and underscores, at least three of them, that begin with a letter. Its section “Edit
 * custom enums in JSON metadata” has the choices: an id of its own for each, `name` and `stringValue` for every one of type
 * string, and `customEnumId` at the parameter; the lengths are those of the schema of the unified manifest.
 */
const dataType = z.enum(["boolean", "number", "string", "any"]);
const dimensionality = z.enum(["scalar", "matrix"]);
const metadata = z.strictObject({
  allowCustomDataForDataTypeAny: z.literal(true),
  allowErrorForDataTypeAny: z.literal(true),
  functions: z
    .array(
      z.strictObject({
        id: z.string().regex(/^[A-Za-z0-9._]{3,}$/),
        name: z
          .string()
          .regex(/^[A-Z][A-Z0-9._]{2,}$/)
          .max(64),
        description: z.string().min(1).max(255),
        helpUrl: z.url({ protocol: /^https$/ }),
        parameters: z.array(
          z.strictObject({
            name: z
              .string()
              .regex(/^[a-z][a-z_]*$/)
              .max(64),
            description: z.string().min(1).max(255),
            type: dataType,
            dimensionality,
            optional: z.literal(true).optional(),
            customEnumId: z.string().optional(),
          }),
        ),
        result: z.strictObject({ type: dataType, dimensionality }),
      }),
    )
    .min(1),
  enums: z.array(
    z.strictObject({
      id: z.string().regex(/^[A-Za-z][A-Za-z0-9._]{2,63}$/),
      type: z.literal("string"),
      values: z
        .array(
          z.strictObject({
            name: z.string().min(1).max(256),
            stringValue: z.string().min(1),
            tooltip: z.string().min(1).max(256),
          }),
        )
        .min(2),
    }),
  ),
});

/**
 * Microsoft’s page “Custom functions naming and localization” asks to avoid names that match an Excel 4.0 macro function. It
 * says nothing against worksheet functions such as DELTA: in Excel the name stands behind the namespace of the add-in (page
 * “Manually create JSON metadata for custom functions”). The macro functions of one word, from the tables Ftab and Cetab of
 * [MS-XLS], sections 2.5.198.17 and 2.5.198.4.
 */
const macroFunctions = (
  "ABSREF ACTIVATE ALERT ALIGNMENT ARGUMENT ATTRIBUTES AUTOCORRECT AXES BEEP BORDER BREAK CALCULATION CALL CALLER CLEAR CLOSE " +
  "COMBINATION CONSOLIDATE COPY CUT DEMOTE DEREF DIRECTORY DISPLAY DOCUMENTS DUPLICATE ECHO ELSE ERROR EVALUATE EXEC EXECUTE " +
  "EXTRACT FCLOSE FILES FILTER FONT FOPEN FOR FORMULA FPOS FREAD FREADLN FSIZE FULL FWRITE FWRITELN GOTO GRIDLINES GROUP HALT " +
  "HELP HIDE HLINE HPAGE HSCROLL INITIATE INPUT INSERT JUSTIFY LAYOUT LEGEND LINKS MESSAGE NAMES NEW NEXT NORMAL NOTE OPEN " +
  "OUTLINE OVERLAY PARSE PASTE PATTERNS PAUSE PICKLIST POKE PRECISION PREFERRED PRINT PROMOTE QUIT REFTEXT REGISTER RELREF " +
  "REQUEST RESTART RESULT RESUME RETURN RUN SAVE SCALE SELECT SELECTION SERIES SHARE SORT SPELLING SPLIT STEP STYLE TABLE " +
  "TERMINATE TEXTREF UNDO UNGROUP UNHIDE UNREGISTER VLINE VOLATILE VPAGE VSCROLL WAIT WHILE WINDOWS WORKGROUP WORKSPACE ZOOM"
).split(" ");

const names = descriptors.map(({ name }) => name);
const json = functionsJson(addresses("https://localhost:3000/").help);

describe("parity of the worksheet functions", () => {
  it("offers the planned functions, each once", () => {
    expect(names).toEqual(planned);
  });

  it("functions.json has the documented format and the same functions", () => {
    const { functions } = metadata.parse(JSON.parse(JSON.stringify(json)));
    expect(functions.map(({ name }) => name)).toEqual(names);
    expect(functions.map(({ id }) => id)).toEqual(names);
    for (const [i, { parameters, result }] of functions.entries()) {
      const descriptor = descriptors[i];
      expect(parameters.map(({ name }) => name)).toEqual(descriptor?.parameters.map(({ name }) => name));
      expect(parameters.map(({ optional }) => optional ?? false)).toEqual(
        descriptor?.parameters.map(({ optional }) => optional),
      );
      expect(result.dimensionality).toBe(descriptor?.result === "table" ? "matrix" : "scalar");
    }
  });

  it("offers the words of every choice while it is typed, and each of them is known", () => {
    const { functions, enums } = json;
    expect(new Set(enums.map(({ id }) => id)).size).toBe(enums.length);
    const offered = functions.flatMap(({ name, parameters }) =>
      parameters.flatMap((parameter) => (parameter.customEnumId ? [`${name} ${parameter.name}`] : [])),
    );
    expect(offered).toEqual([
      ...["LENGTH to_unit", "LENGTH from_unit", "TAPE from_unit", "EASECHECK garment_class"],
      ...["LISTINGWORDS form", "LISTINGWORDS language", "STEPS advice"],
      ...["DARTS unit", "GROUPS zone", "GROUPS method", "GROUPS estimates", "TREE zone", "TREE method"],
    ]);
    for (const [i, { parameters }] of functions.entries()) {
      for (const [at, { customEnumId, type }] of parameters.entries()) {
        if (customEnumId === undefined) continue;
        const { values } = enums.find(({ id }) => id === customEnumId) ?? { values: [] };
        expect(values.length).toBeGreaterThan(1);
        expect(type).toBe("string");
        const parameter = descriptors[i]?.parameters[at];
        for (const { stringValue } of values) {
          expect(String(parameter?.read(stringValue, "it")).toLowerCase()).toBe(stringValue.toLowerCase());
        }
      }
    }
  });

  it("every zone that is offered can be compared, and every class has ease rules of its own to look up", () => {
    const words = (id: string) => json.enums.find((each) => each.id === id)?.values.map(({ name }) => name);
    expect(words("BODY_PART")).toEqual(zoneChoices);
    expect(words("GARMENT_CLASS")).toEqual(defaultGarmentClasses.map(({ name }) => name));
    expect(words("JOIN_METHOD")).toEqual(linkageMethods);
  });

  it("no name looks like a cell, such as ABC1", () => {
    expect(names.filter((name) => /^([A-Z]{1,3}\d+|R\d*C\d*)$/.test(name))).toEqual([]);
  });

  it("no name is that of an Excel 4.0 macro function, or one that a worksheet uses for another answer", () => {
    expect(names.filter((name) => macroFunctions.includes(name) || name === "MATCH")).toEqual([]);
  });

  it("functions.js registers the same functions", async () => {
    const { registered } = await loadFunctions();
    expect([...registered.keys()]).toEqual(names);
  });

  it("the reference has a section for the same functions", () => {
    const sections = [...referenceMarkdown().matchAll(/^## ([A-Z]{3,})$/gm)].map((match) => match[1]);
    expect(sections).toEqual(names);
  });

  it("the reference gives every default ease rule with its reason", () => {
    const text = referenceMarkdown();
    for (const { garmentClass, measure, source = "" } of defaultEaseRules) {
      const name = measureById(measure)?.name ?? measure;
      const reason = source.replace("The project’s own: ", "");
      const row = text.split("\n").find((line) => line.startsWith(`| ${garmentClass} | ${name} | `));
      expect(row, `${garmentClass}, ${name}`).toContain(`| ${reason} |`);
    }
  });

  it("the committed reference is up to date (run npm run docs when this fails)", () => {
    expect(readFileSync("functions/REFERENCE.md", "utf8")).toBe(referenceMarkdown());
  });
});
