import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { descriptors } from "../../functions/all.ts";
import { functionsJson } from "../../functions/metadata.ts";
import { referenceMarkdown } from "../../functions/reference.ts";
import { manifestJson } from "../../manifest/manifest.ts";
import { loadFunctions } from "./loadFunctions.ts";

/** The functions that are planned for this release. */
const planned = [
  "LENGTH", "TAPE", "TEM", "FLAGS", "SCORE", "EXPECTED", "DELTA", "COMPARE", "OVER", "EASE", "EASECHECK", "CLEARANCE", "WHATFITS", "REASONS",
  "WEARERS", "WARDROBE", "STEPS", "GRADE", "RESIZE", "FLARE", "DARTS", "FIGURESCALE",
  "APART", "NEAREST", "SHARES", "GROUPS", "TREE", "BASES", "MEASURENEXT",
]; // prettier-ignore

/**
 * The custom functions metadata, written after Microsoft’s page “Manually create JSON metadata for custom functions in
 * Excel”: names of letters, digits, dots and underscores, at least three of them, that begin with a letter.
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
        helpUrl: z.url({ protocol: /^https$/ }).optional(),
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
          }),
        ),
        result: z.strictObject({ type: dataType, dimensionality }),
      }),
    )
    .min(1),
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

describe("parity of the worksheet functions", () => {
  it("offers the planned functions, each once", () => {
    expect(names).toEqual(planned);
  });

  it("functions.json has the documented format and the same functions", () => {
    const { functions } = metadata.parse(JSON.parse(JSON.stringify(functionsJson())));
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

  it("the unified manifest declares the same functions", () => {
    const declared = z
      .object({
        extensions: z.tuple([
          z.object({
            runtimes: z.tuple([
              z.object({ customFunctions: z.object({ functions: z.array(z.object({ id: z.string() })) }) }),
            ]),
          }),
        ]),
      })
      .parse(manifestJson("https://localhost:3000/"));
    expect(declared.extensions[0].runtimes[0].customFunctions.functions.map(({ id }) => id)).toEqual(names);
  });

  it("the reference has a section for the same functions", () => {
    const sections = [...referenceMarkdown().matchAll(/^## ([A-Z]{3,})$/gm)].map((match) => match[1]);
    expect(sections).toEqual(names);
  });

  it("the committed reference is up to date (run npm run docs when this fails)", () => {
    expect(readFileSync("functions/REFERENCE.md", "utf8")).toBe(referenceMarkdown());
  });
});
