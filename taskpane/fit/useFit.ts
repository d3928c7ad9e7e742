import { useRead } from "../shell/useRead.ts";
import type { ChosenTables } from "./fitTables.ts";
import type { Fit } from "./readFit.ts";
import { readFit } from "./readFit.ts";

/** What the workbook holds for the fit of garments, kept up to date. `undefined` until it is read for the first time. */
export function useFit(chosen: ChosenTables): Fit | undefined {
  return useRead(readFit, chosen);
}
