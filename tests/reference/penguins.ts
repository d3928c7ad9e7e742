import { readFileSync } from "node:fs";
import { z } from "zod";

/** A bird: beak length, beak depth, flipper length in mm, body mass in g; NaN is missing. */
export interface Penguin {
  readonly measures: readonly number[];
  readonly sex: "MALE" | "FEMALE" | undefined;
}

const reading = z.number().nullable();
const rows = z.array(
  z.object({
    "Beak Length (mm)": reading,
    "Beak Depth (mm)": reading,
    "Flipper Length (mm)": reading,
    "Body Mass (g)": reading,
    Sex: z.enum(["MALE", "FEMALE", "."]).nullable(),
  }),
);

/**
 * The 344 penguins of Palmer Archipelago, two of them without any measure and nine more of unknown sex, as the package
 * vega-datasets (a development dependency) holds them; nothing of the table is copied here.
 *
 * Source: K. B. Gorman, T. D. Williams & W. R. Fraser, PLoS ONE 9(3), e90081 (2014); the R package palmerpenguins, CC0.
 *
 * @throws when the package is not installed
 */
export function penguins(): readonly Penguin[] {
  const text = readFileSync("node_modules/vega-datasets/data/penguins.json", "utf8");
  return rows.parse(JSON.parse(text)).map((row) => ({
    measures: [
      row["Beak Length (mm)"],
      row["Beak Depth (mm)"],
      row["Flipper Length (mm)"],
      row["Body Mass (g)"],
    ].map((value) => value ?? Number.NaN),
    sex: row.Sex === "." || row.Sex === null ? undefined : row.Sex,
  }));
}
